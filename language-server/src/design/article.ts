/** Words that are read letter by letter, the first of which sounds like a vowel: an RCBO, an SPD. */
const spelt = /^(rcbo|rcd|spd|mpp)\b/i;

/** A noun with its indefinite article: "an inverter", "a string", "an RCBO". */
export function withArticle(noun: string): string {
  return `${/^[aeio]/i.test(noun) || spelt.test(noun) ? "an" : "a"} ${noun}`;
}

/** The same at the beginning of a sentence. */
export function withCapitalArticle(noun: string): string {
  return withArticle(noun).replace(/^a/, "A");
}
