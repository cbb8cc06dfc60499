import { flagOf, wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { InverterView, NeutralEarth, NeutralEarthLink } from "./plant.js";
import { polesOf } from "./poles.js";

/**
 * Which joints of neutral and earth are closed with the grid there, and which in an island for what is backed up.
 * The supplier's own counts in an island too, unless everything that parts the island from the supply opens the neutral.
 */
export function neutralEarthLinks(
  links: readonly Item[],
  supplies: readonly Item[],
  inverters: readonly InverterView[],
): NeutralEarth {
  const grid: NeutralEarthLink[] = supplies.flatMap(suppliersLink);
  const island: NeutralEarthLink[] = [];
  for (const link of links) {
    const mode = wordOf(link, "closed-in");
    if (mode === undefined) {
      const perhaps: NeutralEarthLink = { link, closed: "perhaps", missing: { thing: link, property: "closed-in" } };
      grid.push(perhaps);
      island.push(perhaps);
      continue;
    }
    if (mode !== "island") grid.push({ link, closed: "yes" });
    if (mode !== "grid") island.push({ link, closed: "yes" });
  }
  for (const supply of supplies) {
    const [own] = suppliersLink(supply);
    const remains = own && suppliersNeutralRemains(inverters);
    if (remains) island.push({ ...own, ...remains });
  }
  return { grid, island };
}

function suppliersLink(supply: Item): NeutralEarthLink[] {
  const earthing = wordOf(supply, "earthing");
  if (earthing === "IT") return [];
  if (earthing === undefined) return [{ supply, closed: "perhaps", missing: { thing: supply, property: "earthing" } }];
  return [{ supply, closed: "yes" }];
}

/** Whether the supplier's neutral stays joined to the island's; undefined where it does not. */
function suppliersNeutralRemains(inverters: readonly InverterView[]): Partial<NeutralEarthLink> | undefined {
  let doubt: Partial<NeutralEarthLink> | undefined;
  for (const { grid, backup } of inverters) {
    if (!backup || backup.circuits.length + backup.loads.length + backup.boards.length === 0) continue;
    const own = grid ? flagOf(grid.port, "disconnects-all-poles") : true;
    if (own === false) return { closed: "yes" };
    if (own === undefined && grid) doubt ??= perhaps(grid.port, "disconnects-all-poles");
    for (const changeover of backup.changeovers) {
      const { opened, needed } = polesOf(changeover, "ac");
      if (opened === undefined) doubt ??= perhaps(changeover, "poles");
      else if (opened < needed) return { closed: "yes" };
    }
  }
  return doubt;
}

function perhaps(thing: Item, property: string): Partial<NeutralEarthLink> {
  return { closed: "perhaps", missing: { thing, property } };
}
