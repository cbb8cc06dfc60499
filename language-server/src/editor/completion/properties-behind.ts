import { tokensBefore } from "./tokens.js";

/** Names of the properties written behind a cursor in the same block, so that they are not offered again. */
export function propertiesBehind(text: string, offset: number): Set<string> {
  // A block is short; a brace that was never closed must not cost a walk through the file.
  const { tokens } = tokensBefore(text, offset, Math.min(text.length, offset + 4000));
  const names = new Set<string>();
  let depth = 0;
  for (const [index, { token, image }] of tokens.entries()) {
    if (token === "{") depth++;
    if (token === "}" && --depth < 0) break;
    if (depth === 0 && token === "word" && tokens[index + 1]?.token === ":") names.add(image);
  }
  return names;
}
