import type { Item } from "../design/things.js";
import type { Position } from "./circuit.js";

/** What decides which sources feed: light on the array, and whether the public supply is there. */
export interface Mode {
  readonly light: "day" | "night";
  readonly supply: "grid" | "island";
}

/** A mode with what somebody has switched. */
export interface Situation extends Mode {
  /** Devices that are open. */
  readonly open: ReadonlySet<Item>;
  /** Changeovers that do not stand where the mode puts them; `any` joins both positions, to be on the safe side. */
  readonly positions?: ReadonlyMap<Item, Position | "any">;
}

/** Every mode there is, the one with most sources first. */
export const modes: readonly Mode[] = [
  { light: "day", supply: "grid" },
  { light: "night", supply: "grid" },
  { light: "day", supply: "island" },
  { light: "night", supply: "island" },
];

/** Where a changeover stands: as said, else grid with the supply there and backup without. */
export function positionOf(changeover: Item, { supply, positions }: Omit<Situation, "open">): Position | "any" {
  return positions?.get(changeover) ?? (supply === "grid" ? "grid" : "backup");
}

/** Whether a joint that is closed in one position only is closed. */
export function isInPosition(changeover: Item, position: Position, situation: Omit<Situation, "open">): boolean {
  const stands = positionOf(changeover, situation);
  return stands === "any" || stands === position;
}

/** As many changeovers as are tried in each of their positions; with more, the others count as joining both. */
const varied = 5;

/** Every way the changeovers may stand: nobody who isolates should have to know. */
export function allPositions(changeovers: readonly Item[]): ReadonlyMap<Item, Position | "any">[] {
  let found: Map<Item, Position | "any">[] = [new Map(changeovers.map((changeover) => [changeover, "any"]))];
  for (const changeover of changeovers.slice(0, varied))
    found = found.flatMap((positions) => [
      new Map(positions).set(changeover, "grid"),
      new Map(positions).set(changeover, "backup"),
    ]);
  return found;
}

export function modeText({ light, supply }: Mode): string {
  return `${light === "day" ? "by day" : "by night"}, ${supply === "grid" ? "with the grid" : "in an island"}`;
}
