import { isBlank, isDigit, isKeyword, isNameStart, nameEnd } from "./lexical.js";
import { findUnit } from "./units.js";

/**
 * Finds where a quantity ends, so that a number and its unit are one word of the language.
 *
 * A known unit after the number belongs to it. An unknown word does only where it plainly stands in a unit's place:
 * then the message can say "18 M: did you mean m?" instead of "unexpected word".
 */

/** What a quantity may begin with; for the lexer's first-character table. */
export const quantityStarts = [..."0123456789+-−"];

const number = /[+\-−]?\d+(?:[.,]\d+)?(?:[eE][+-]?\d+)?/uy;
const aught = /[1-4]\/0(?=[ \t\u00a0\u202f]*AWG(?![\w/]))/uy;
const unitLike = /(?:[A-Za-z%°ºΩΩµμ℃℉]|\/(?=[A-Za-z]))(?:[\w%°º²³^ΩΩµμ·℃℉]|\/(?=[A-Za-z])|-(?=\w))*/uy;

/**
 * End offset of the quantity that begins at `offset`, or −1 where none does. With `bare` only the number is taken:
 * after `is` and `way` a number is a count, and the next word is `x` or a name.
 */
export function quantityEnd(text: string, offset: number, bare = false): number {
  const end = match(aught, text, offset);
  const numberEnd = end >= 0 ? end : match(number, text, offset);
  if (numberEnd < 0 || bare) return numberEnd;

  let at = numberEnd;
  while (isBlank(text.charCodeAt(at))) at++;
  const unitEnd = match(unitLike, text, at);
  if (unitEnd < 0) return numberEnd;
  const word = text.slice(at, unitEnd);
  // `poles: 2  s: 3`: a word with a colon is the next property, whatever else it may mean.
  if (at > numberEnd && isBeforeColon(text, unitEnd)) return numberEnd;
  if (findUnit(word)) return unitEnd;
  if (isKeyword(word)) return numberEnd;
  return at === numberEnd || standsAsUnit(text, unitEnd) ? unitEnd : numberEnd;
}

function match(pattern: RegExp, text: string, offset: number): number {
  pattern.lastIndex = offset;
  return pattern.test(text) ? pattern.lastIndex : -1;
}

function isBeforeColon(text: string, offset: number): boolean {
  let at = offset;
  while (isBlank(text.charCodeAt(at))) at++;
  return text[at] === ":";
}

/** Nothing, a closing mark, `of`, `..`, `from "…"`, a comment or the next property follows. */
function standsAsUnit(text: string, offset: number): boolean {
  let at = offset;
  while (isBlank(text.charCodeAt(at))) at++;
  const code = text.charCodeAt(at);
  if (Number.isNaN(code) || "\n\r}],".includes(text[at]!) || text.startsWith("..", at)) return true;
  if (text.startsWith("//", at) || text.startsWith("/*", at)) return true;
  if (at === offset || !isNameStart(code) || isDigit(code)) return false;
  const end = nameEnd(text, at);
  const word = text.slice(at, end);
  if (word === "of" || isBeforeColon(text, end)) return true;
  return word === "from" && /^\s*"/.test(text.slice(end, end + 20));
}
