import type { Connection } from "vscode-languageserver";
import { type Asked, answerProblem, nameProblem } from "../guided/answer.js";
import { type KnownPart, knownParts } from "../guided/known-parts.js";
import { type PartPlan, partText } from "../guided/part-text.js";
import { type ReadText, readTextWith } from "../guided/read-text.js";
import { type Sheet, type SheetKind, sheetKinds, sheetOf } from "../guided/sheet.js";
import { type SitePlan, type SiteText, siteText } from "../guided/site-text.js";
import type { Editor } from "./editor.js";

/*
 * Questions of whoever leads a user through a new site or a new part. The language says what is asked, whether an
 * answer will do, and what is written in the end.
 */

/** Registers them. */
export function addGuidedRequests(connection: Connection, editor: Editor): void {
  const { view, positions, services } = editor;
  const read: ReadText = (text) => readTextWith(editor.parser)(text);

  connection.onRequest("sunwright/sheetKinds", (): SheetKind[] => sheetKinds());
  connection.onRequest("sunwright/sheet", ({ kind }: { kind: string }): Sheet | null => sheetOf(kind) ?? null);
  connection.onRequest("sunwright/answerProblem", ({ answer, ...asked }: Asked & { answer: string }): string | null => {
    return answerProblem(asked, answer, read) ?? null;
  });
  connection.onRequest(
    "sunwright/nameProblem",
    ({ name }: { name: string }): string | null => nameProblem(name) ?? null,
  );
  connection.onRequest("sunwright/partText", (plan: PartPlan): string => partText(plan, read));
  connection.onRequest("sunwright/parts", async ({ kinds }: { kinds: string[] }): Promise<KnownPart[]> => {
    // Before the folders have been read, no part is known.
    await services.workspace.WorkspaceManager.ready;
    return knownParts(view.sources, kinds).map((part) => ({ ...part, uri: positions.spelled(part.uri) }));
  });
  connection.onRequest(
    "sunwright/siteText",
    ({ plan, uri }: { plan: SitePlan; uri: string }): SiteText => siteText(plan, uri, read),
  );
}
