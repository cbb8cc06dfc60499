import type { Connection, Location, Range } from "vscode-languageserver";
import type { Mode } from "../../circuit/modes.js";
import type { Diagram } from "../../drawing/diagram.js";
import { type DesignHead, diagramAnswer } from "../diagram/answer.js";
import { type LiveParts, liveParts } from "../diagram/live-parts.js";
import type { WrittenAt } from "../diagram/places.js";
import type { Editor } from "./editor.js";
import type { Positions } from "./positions.js";
import { type About, type AboutDesign, answerTo, askedDesign, askedMode } from "./questions.js";

/* `sunwright/diagram`: the single-line diagram of a design that a document belongs to. */

/** What is told of a design beside its picture, in the editor's own lines and columns. */
export interface HeadResult extends Omit<DesignHead, "unread"> {
  readonly unread: readonly Location[];
}
export interface DiagramResult extends HeadResult {
  readonly diagram: Diagram;
  readonly places: readonly PlaceResult[];
}
export interface PlaceResult {
  readonly id: string;
  readonly uri: string;
  readonly name: Range;
  readonly whole: Range;
}

/**
 * `sunwright/liveParts`: what stays live with some devices open, for the picture of a design. The document is the one
 * that the design begins in; names that are no device's are passed over, because the text may have changed meanwhile.
 */
export interface LivePartsParams extends About, Partial<Mode> {
  readonly open: readonly string[];
}

export function addDiagramRequests(connection: Connection, editor: Editor): void {
  const { view, positions, severities } = editor;
  answerTo(connection, editor, "sunwright/diagram", (uri, params: AboutDesign): DiagramResult => {
    const answer = diagramAnswer(view, uri, askedDesign(params), severities);
    return {
      ...headResult(answer, positions),
      diagram: answer.diagram,
      places: placeResults(answer.places, positions),
    };
  });
  answerTo(
    connection,
    editor,
    "sunwright/liveParts",
    (uri, { open, ...mode }: LivePartsParams): LiveParts => liveParts(view.assessment(uri), open, askedMode(mode)),
  );
}

export function headResult({ entry, designs, verdict, whatIf, unread }: DesignHead, positions: Positions): HeadResult {
  return {
    entry: positions.spelled(entry),
    designs: designs.map((each) => ({ ...each, entry: positions.spelled(each.entry) })),
    verdict,
    whatIf,
    unread: unread.map((span) => positions.location(span)),
  };
}

export function placeResults(places: readonly WrittenAt[], positions: Positions): PlaceResult[] {
  return places.map(({ id, name, whole }) => ({
    id,
    uri: positions.spelled(name.uri),
    name: positions.range(name),
    whole: positions.range(whole),
  }));
}
