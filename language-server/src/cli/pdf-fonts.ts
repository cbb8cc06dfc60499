import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

/** The faces that texts are set in; each file holds some alphabets only. */
const alphabets = ["latin", "latin-ext", "greek", "cyrillic"] as const;

export interface Face {
  readonly name: string;
  readonly bytes: Buffer;
}

/** In the order in which they are asked for a letter. */
export function faces(isBold: boolean): Face[] {
  const { resolve } = createRequire(import.meta.url);
  const weight = isBold ? 700 : 400;
  return alphabets.map((alphabet) => ({
    name: `${alphabet}-${weight}`,
    bytes: readFileSync(resolve(`@fontsource/arimo/files/arimo-${alphabet}-${weight}-normal.woff`)),
  }));
}

/** For signs that no face has. */
export const plainly: Readonly<Record<string, string>> = { "→": "to", "≤": "<=", "≥": ">=", "−": "–", "∞": "oo" };
