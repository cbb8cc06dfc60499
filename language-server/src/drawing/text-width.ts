/**
 * How wide a text is, without a screen: layout has to run in a worker and on the command line. Widths are those of the
 * sans-serif that PDFs are set in; SVGs carry the width with the text, so that another font is fitted to it.
 */

/** Per thousand of the size, from the space to the tilde. */
const widths = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
  556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
  722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
  556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
  260, 334, 584,
];
const others: Readonly<Record<string, number>> = {
  "·": 333,
  "×": 584,
  "−": 584,
  "–": 556,
  "—": 1000,
  "°": 400,
  "²": 333,
  Δ: 668,
  Ω: 768,
  "…": 1000,
  "≤": 549,
  "≥": 549,
  "→": 1000,
  "’": 222,
  "“": 333,
  "”": 333,
  "±": 549,
};
const usual = 600;
/** Bold letters are wider, by different amounts; this is a bound for words and figures. */
const boldFactor = 1.08;

export function textWidth(words: string, size: number, bold = false): number {
  let sum = 0;
  for (const letter of words) {
    const code = letter.codePointAt(0)! - 32;
    sum += (code < widths.length ? widths[code] : others[letter]) ?? usual;
  }
  return ((sum * size) / 1000) * (bold ? boldFactor : 1);
}

/** Words broken into lines that are no wider than `width`; a word that is wider is cut. */
export function wrapText(words: string, size: number, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of words.split(/\s+/).flatMap((each) => pieces(each, size, width))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (textWidth(longer, size) <= width || line === "") line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  if (line !== "") lines.push(line);
  return lines;
}

function pieces(word: string, size: number, width: number): string[] {
  if (textWidth(word, size) <= width) return [word];
  const found: string[] = [];
  let piece = "";
  for (const letter of word) {
    if (piece !== "" && textWidth(piece + letter, size) > width) {
      found.push(piece);
      piece = "";
    }
    piece += letter;
  }
  return [...found, piece];
}

/** A text cut to a width, with an ellipsis where something is left out. */
export function fitText(words: string, size: number, width: number, bold = false): string {
  if (textWidth(words, size, bold) <= width) return words;
  let kept = "";
  for (const letter of words) {
    if (textWidth(`${kept}${letter}…`, size, bold) > width) break;
    kept += letter;
  }
  return `${kept.trimEnd()}…`;
}
