import type { Design } from "../../design/design.js";
import type { Item } from "../../design/things.js";
import { withNested } from "./names-offers.js";
import type { Offer } from "./offer.js";

/** The next free name of a kind, in the letters that the design uses for it: Q3 after Q1 and Q2. */
export function nameOffers(design: Design, kind: string): Offer[] {
  return [{ label: nextNameOf(design, kind), sort: "name", detail: "next free name" }];
}

export function nextNameOf(design: Design, kind: string): string {
  const names = kind === "run" ? design.runs.map(({ id }) => id) : namesOf(design.items, kind);
  return nextName(design, usualLetters(names) ?? letters[kind] ?? kind.slice(0, 1).toUpperCase());
}

/** Letters by which drawings of the trade call things, after IEC 81346-2, where a design has none of its own yet. */
const letters: Readonly<Record<string, string>> = {
  run: "W",
  isolator: "Q",
  breaker: "K",
  rcbo: "K",
  rcd: "R",
  spd: "F",
  fuse: "F",
};

function namesOf(items: readonly Item[], kind: string): string[] {
  return [...withNested(items)].filter((item) => item.kind === kind).map(({ name }) => name);
}

/** The letters before the number that most names of a sort begin with. */
function usualLetters(names: readonly string[]): string | undefined {
  const counts = new Map<string, number>();
  for (const name of names) {
    const letters = /^([^\d]+)\d+$/.exec(name)?.[1];
    if (letters !== undefined) counts.set(letters, (counts.get(letters) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}

/** The next free name of some letters: W13 after W12. Nested names count too, so that no bare name gets two meanings. */
export function nextName(design: Design, letters: string): string {
  let highest = 0;
  const names = [...withNested(design.items)].map(({ name }) => name).concat(design.runs.map(({ id }) => id));
  for (const name of names) {
    if (!name.startsWith(letters)) continue;
    const digits = name.slice(letters.length);
    if (/^\d{1,9}$/.test(digits)) highest = Math.max(highest, Number(digits));
  }
  return `${letters}${highest + 1}`;
}
