import type { Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import { calculatedRiskLevel } from "../physics/surge-ac.js";
import { formatApart } from "../physics/working.js";
import type { Judge } from "./judge.js";
import type { Fix, Outcome, Related } from "./rule.js";
import { needFacts } from "./run-facts.js";
import { eachOf } from "./several.js";
import { boardSurgeFixes } from "./surge-on-board.js";

/** A supply with what it feeds. */
export interface SupplySubject {
  readonly plant: Plant;
  readonly supply: Item;
}

/** Supplies that something is wired to. */
export function* wiredSupplies(plant: Plant): Generator<SupplySubject> {
  for (const { root, order } of plant.trees)
    if (root.item.kind === "supply" && order.length > 1) yield { plant, supply: root.item };
}

/** Whether the a.c. side asks for surge protection where it has none. */
export function acNeed({ plant, supply }: SupplySubject, judge: Judge): Outcome | readonly Outcome[] {
  const own = plant.surge.find(({ path }) => path?.from.item === supply);
  if (own) return judge.holds(`${own.spd.id} is fitted`);
  const fixes = (asks: Judge): Fix[] => boardSurgeFixes(plant, supply, asks);
  return eachOf(
    () => nearRods(supply, judge),
    () => byRisk(supply, judge),
  ).map((outcome) => (outcome.outcome === "finding" ? { ...outcome, fixes } : outcome));
}

/** Rods on the building ask for a device at the origin whoever declines: it joins the line to earth for the stroke. */
function nearRods(supply: Item, judge: Judge): Outcome | undefined {
  if (judge.needSiteWord("lightning-protection") === "none") return undefined;
  const { site } = judge;
  return judge.finding({
    severity: "error",
    what: `The building has lightning protection, and nothing protects its a.c. side from surges where ${supply.id} comes in.`,
    why: "A share of the stroke leaves by the supply line, through everything that is connected to it.",
    todo: "Fit a type 1 surge protective device at the origin.",
    spot: { thing: supply, word: "name" },
    related: site
      ? [{ spot: { thing: site, property: "lightning-protection" }, message: "the building has rods" }]
      : [],
  });
}

function byRisk(supply: Item, judge: Judge): Outcome | undefined {
  // With rods a device is asked for in any case.
  if ((judge.siteWord("lightning-protection") ?? "none") !== "none") return undefined;
  const declined = judge.text(supply, "surge-risk-declined");
  if (declined !== undefined && declined.trim() !== "") return judge.holds(`the owner goes without: ${declined}`);
  const { site } = judge;
  const { surgeRisk } = judge.ruleSet.ac;
  if (!surgeRisk) return asked(supply, judge);
  if (site) needFacts(judge, [site, "surroundings"], [site, "ground-flash-density"]);
  const density = judge.needSite("ground-flash-density");
  const environment = surgeRisk.environment.get(judge.needSiteWord("surroundings"));
  if (!environment) return judge.notChecked("no factor is given for these surroundings");
  if (density.value === 0) return judge.notApplicable("no lightning is expected here");
  const level = calculatedRiskLevel(environment, surgeRisk.line, density);
  if (level.value >= surgeRisk.least.value) return judge.passAtLeast(level, surgeRisk.least, "calculated risk level");
  const [has, least] = formatApart(level, surgeRisk.least);
  return judge.finding({
    ...asked(supply, judge),
    what: `Nothing on the a.c. side of ${supply.id} protects from surges; its calculated risk level is ${has}, and below ${least} a device is asked for.`,
    value: level,
    limit: surgeRisk.least,
  });
}

function asked(supply: Item, judge: Judge) {
  const overhead: Related[] =
    judge.flag(supply, "overhead") === true
      ? [{ spot: { thing: supply, property: "overhead" }, message: "the line comes overhead, where it is hit most" }]
      : [];
  return judge.finding({
    what: `Nothing on the a.c. side of ${supply.id} protects from surges, and no refusal by the owner is recorded.`,
    why: "A stroke nearby, or switching in the network, sends surges along the supply into everything that is connected.",
    todo: "Fit a surge protective device at the board; where the owner declines after being told, record the reason as surge-risk-declined.",
    spot: { thing: supply, word: "name" },
    related: overhead,
  });
}
