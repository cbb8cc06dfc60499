import type { Connection, Position } from "vscode-languageserver";
import type { Mode } from "../../circuit/modes.js";
import { type Answer, isolationAnswer, liveAnswer } from "../switching/answer.js";
import { type DesignChoices, designChoices, thingAt } from "../switching/choices.js";
import { supposed } from "../what-if/suppose.js";
import type { Editor } from "./editor.js";
import { type About, answerTo, askedMode } from "./questions.js";

/*
 * Questions of our own about a design, besides those that every language server answers. Each names a document; the
 * answer is about the text as it stands in the editor.
 */

/** `sunwright/whatIf`: supposes something of the designs of a document, in place of whatever was supposed before. */
interface WhatIfParams extends About {
  /** `S1.count = 12; W1.length = 25 m`; empty: nothing more is supposed. */
  readonly text: string;
  /** Only says whether it makes sense. */
  readonly tryOnly?: boolean;
}
export interface WhatIfResult {
  /** "S1.count = 12 (written: 11)". */
  readonly suppositions: readonly string[];
  /** Why nothing was supposed; what was before then still is. */
  readonly refused?: string;
}

/** `sunwright/switching`: what may be opened and what isolated, and which of it stands at a position. */
interface SwitchingParams extends About {
  readonly position?: Position;
}
export interface SwitchingResult {
  readonly designs: readonly DesignChoices[];
  readonly at?: string;
}

/** `sunwright/live` and `sunwright/isolate`: a page in Markdown. The document is the one that the design begins in. */
interface LiveParams extends About, Partial<Mode> {
  readonly open: readonly string[];
}
interface IsolateParams extends About {
  readonly thing: string;
}

/** Registers them; `refresh` says again what is shown of every file. */
export function addDesignRequests(connection: Connection, editor: Editor, refresh: () => Promise<void>): void {
  const { view, positions } = editor;
  const answer = <Params extends About>(
    method: string,
    give: (uri: string, params: Params) => object | Promise<object>,
  ): void => answerTo(connection, editor, method, give);

  answer("sunwright/whatIf", async (uri, { text, tryOnly }: WhatIfParams): Promise<WhatIfResult> => {
    const isNothing = text.trim() === "";
    const wanted = isNothing ? undefined : supposed(view, uri, text);
    if (typeof wanted === "string") return { suppositions: [], refused: wanted };
    if (!tryOnly) {
      view.suppose(wanted?.entries ?? [], wanted?.overlay);
      await refresh();
    }
    return { suppositions: wanted?.texts ?? [] };
  });
  answer("sunwright/switching", (uri, { position }: SwitchingParams): SwitchingResult => {
    const designs = designChoices(view, uri).map((each) => ({ ...each, entry: positions.spelled(each.entry) }));
    const at = position && thingAt(view, uri, positions.offset(uri, position));
    return { designs, ...(at !== undefined && { at }) };
  });
  answer(
    "sunwright/live",
    (uri, { open, ...mode }: LiveParams): Answer => liveAnswer(view, uri, open, askedMode(mode)),
  );
  answer("sunwright/isolate", (uri, { thing }: IsolateParams): Answer => isolationAnswer(view, uri, thing));
}
