import type { CancellationToken } from "vscode-jsonrpc";
import { layout, type Placed } from "../drawing/layout.js";
import { renderSvg } from "../drawing/render.js";
import { ofPage } from "../drawing/themes.js";
import type { DrawParams } from "./questions.js";

/** The last layout: whoever only wants it drawn otherwise does not wait for another. */
let last: { readonly key: string; readonly placed: Promise<Placed> } | undefined;

/** The picture, or null where nobody waits for it any more. */
export async function draw({ diagram }: DrawParams, token: CancellationToken): Promise<string | null> {
  const key = JSON.stringify(diagram);
  if (last?.key !== key) last = { key, placed: layout(diagram) };
  const placed = await last.placed;
  return token.isCancellationRequested ? null : renderSvg(placed, ofPage, { sheet: false });
}
