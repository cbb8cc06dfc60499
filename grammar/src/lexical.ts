/** What the words of the language are made of: shared by the lexer, the chunk scanner and syntax colouring. */

/** Words that carry a reference or begin a declaration. Each of them may still be somebody's name. */
export const keywords = [
  "use",
  "part",
  "is",
  "x",
  "way",
  "serves",
  "run",
  "from",
  "to",
  "of",
  "measured",
  "on",
  "departure",
  "because",
  "expect",
  "yes",
  "no",
] as const;
const keywordSet: ReadonlySet<string> = new Set(keywords);
export function isKeyword(word: string): boolean {
  return keywordSet.has(word);
}

/** Keywords that a declaration begins with; every other declaration begins with the kind of an item. */
export const declarationWords: ReadonlySet<string> = new Set(["use", "part", "run", "measured", "departure", "expect"]);
/** Keywords that only ever continue a declaration. */
export const continuationWords: ReadonlySet<string> = new Set([
  "is",
  "x",
  "serves",
  "from",
  "to",
  "of",
  "on",
  "because",
]);

const letters =
  "A-Za-z_\\u00C0-\\u00D6\\u00D8-\\u00F6\\u00F8-\\u02FF\\u0370-\\u167F\\u1681-\\u1FFF\\u2C00-\\u2DFF\\u3040-\\uD7FF\\uF900-\\uFDCF\\uFDF0-\\uFEFC";
const more = `0-9${letters}\\u0300-\\u036F`;
/** Regular expression source of a name; the terminal ID of the grammar is the same, and a test compares them. */
export const nameSource = `[${letters}][${more}]*(?:-[${more}]+)*`;

const letter = new RegExp(`[${letters}]`);
const part = new RegExp(`[${more}]`);

/** May a name begin with this UTF-16 unit? */
export function isNameStart(code: number): boolean {
  if (code < 128) return (code >= 97 && code <= 122) || (code >= 65 && code <= 90) || code === 95;
  return letter.test(String.fromCharCode(code));
}
/** May a name go on with this UTF-16 unit (inner hyphens apart)? */
export function isNamePart(code: number): boolean {
  if (code < 128) return isNameStart(code) || isDigit(code);
  return part.test(String.fromCharCode(code));
}
export function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}
/** Space, tab and their unbreakable kin: blanks that stay on the line. */
export function isBlank(code: number): boolean {
  return code === 32 || code === 9 || code === 0xa0 || code === 0x202f;
}

/** End of the name that begins at `offset`; a hyphen belongs to it only between two of its characters. */
export function nameEnd(text: string, offset: number): number {
  let at = offset + 1;
  for (;;) {
    const code = text.charCodeAt(at);
    if (isNamePart(code)) at++;
    else if (code === 45 && isNamePart(text.charCodeAt(at + 1))) at += 2;
    else return at;
  }
}
