import { absolute } from "../../place.js";
import { fragmentAt } from "../fragment-at.js";
import type { WorkspaceView } from "../workspace-view.js";
import { extractPart } from "./extract-part.js";
import { insertDevice } from "./insert-device.js";
import { moveItem } from "./move-item.js";
import type { Asked, Refactoring, RefactoringKind } from "./refactoring.js";
import { splitString } from "./split-string.js";

export interface Wanted {
  /** Whether a kind is of interest to whoever asks. */
  readonly isWanted: (kind: RefactoringKind) => boolean;
  /** Whether the client can make a file. */
  readonly canCreate: boolean;
}

/** Every refactoring of the declaration that a stretch of a file lies in; none where several are touched. */
export function refactoringsAt(
  view: WorkspaceView,
  uri: string,
  start: number,
  end: number,
  { isWanted, canCreate }: Wanted,
): Refactoring[] {
  const asked = askedAt(view, uri, start, end);
  if (!asked) return [];
  return [
    ...(isWanted("refactor.extract") ? extractPart(asked) : []),
    ...(isWanted("refactor.rewrite") ? [...splitString(asked), ...insertDevice(asked)] : []),
    ...(isWanted("refactor.move") ? moveItem(asked, canCreate) : []),
  ];
}

function askedAt(view: WorkspaceView, uri: string, start: number, end: number): Asked | undefined {
  const text = view.sources.text(uri);
  const fragment = fragmentAt(view.sources.fragments(uri), start);
  if (text === undefined || !fragment || fragment.broken) return undefined;
  const declaration = fragment.declarations.find(({ place }) => {
    const whole = absolute(place);
    return whole.start <= start && end <= whole.end;
  });
  if (!declaration) return undefined;
  const designs = view.assessments(uri).map(({ design }) => design);
  return { view, uri, text, declaration, start, end, designs };
}
