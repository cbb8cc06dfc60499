import { type Mode, modes, modeText } from "../circuit/modes.js";

/** The modes that somebody asks about; without a choice all of them. */
export function modesFor(wanted: Partial<Mode>): Mode[] {
  return modes.filter(
    ({ light, supply }) =>
      (wanted.light === undefined || wanted.light === light) &&
      (wanted.supply === undefined || wanted.supply === supply),
  );
}

/** "by day or night, with the grid": all that was asked about, for a heading. */
export function askedText({ light, supply }: Partial<Mode>): string {
  const lights = light === undefined ? "by day and by night" : light === "day" ? "by day" : "by night";
  const supplies =
    supply === undefined ? "with the grid and in an island" : supply === "grid" ? "with the grid" : "in an island";
  return `${lights}, ${supplies}`;
}

/** In which of the modes asked about something holds; empty where it does in all. */
export function whenText(holds: readonly Mode[], asked: readonly Mode[]): string {
  const lights = choices(holds, asked, "light");
  const supplies = choices(holds, asked, "supply");
  if (holds.length !== lights.kept.length * supplies.kept.length) return holds.map(modeText).join(" or ");
  const parts: string[] = [];
  if (lights.kept.length < lights.all) parts.push(lights.kept[0] === "day" ? "by day" : "by night");
  if (supplies.kept.length < supplies.all) parts.push(supplies.kept[0] === "grid" ? "with the grid" : "in an island");
  return parts.join(", ");
}

function choices<Key extends keyof Mode>(
  holds: readonly Mode[],
  asked: readonly Mode[],
  key: Key,
): { readonly kept: readonly Mode[Key][]; readonly all: number } {
  return { kept: [...new Set(holds.map((mode) => mode[key]))], all: new Set(asked.map((mode) => mode[key])).size };
}
