import { flagOf, given, wordOf } from "../../design/facts.js";
import type { Item, Part } from "../../design/things.js";
import { unitIsolators } from "../../rules/ac-isolator.js";
import { feedingUnits } from "../../rules/ac-units.js";
import { wiredBatteries } from "../../rules/battery-figures.js";
import { batterySwitches } from "../../rules/battery-isolator.js";
import { arrayIsolators } from "../../rules/isolator-there.js";
import { addedSurge } from "../../rules/surge-choice.js";
import { withNested } from "../completion/names-offers.js";
import type { Carrier } from "./carrier.js";

/** The part of a kind that would do in a run, of those in sight: one that the rules would let pass, where they say. */
export function fittingPart(carrier: Carrier, kind: "isolator" | "meter" | "spd"): string | undefined {
  if (kind === "isolator") return isolatorFor(carrier);
  return kind === "spd" ? surgeFor(carrier) : usual(carrier, kind, (part) => suitsPhases(part, carrier));
}

function isolatorFor(carrier: Carrier): string | undefined {
  const { assessment, run, array } = carrier;
  const { judge } = assessment;
  if (array) return arrayIsolators(run, array, judge)[0]?.part.name;
  for (const plant of assessment.plants) {
    for (const wired of wiredBatteries(plant))
      if (wired.view.path?.hops.some(({ by }) => by === run)) return batterySwitches(wired, judge)[0]?.part.name;
    for (const unit of feedingUnits(plant))
      if (unit.toSupply?.hops.some(({ by }) => by === run)) return unitIsolators(unit, judge)[0]?.part.name;
  }
  return usual(carrier, "isolator", (part) => wordOf(part, "supply") === "ac" && opensAll(part, carrier));
}

function surgeFor(carrier: Carrier): string | undefined {
  const { assessment, array } = carrier;
  if (array) return addedSurge(array, "inverter", assessment.judge)[0]?.part.name;
  return usual(carrier, "spd", (part) => wordOf(part, "supply") === "ac");
}

/** The part that the design uses for such a thing already; else the first in sight. */
function usual({ assessment }: Carrier, kind: string, fits: (part: Part) => boolean): string | undefined {
  const { design } = assessment;
  const used = [...withNested(design.items)].find(({ part }) => part?.kind === kind && fits(part))?.part;
  return (used ?? [...design.parts.values()].find((part) => part.kind === kind && fits(part)))?.name;
}

function phasesOf({ assessment, run }: Carrier): number {
  const stated = given(run, "phases")?.value;
  if (stated !== undefined) return stated;
  const supplies: readonly Item[] = assessment.plants.flatMap((plant) => plant.supplies);
  return supplies.some((supply) => given(supply, "phases")?.value === 3) ? 3 : 1;
}

function suitsPhases(part: Part, carrier: Carrier): boolean {
  return (given(part, "phases")?.value ?? 1) === phasesOf(carrier);
}

function opensAll(part: Part, carrier: Carrier): boolean {
  const poles = given(part, "poles")?.value ?? 0;
  const apart = flagOf(part, "switched-neutral") === true && (poles === 1 || poles === 3) ? 1 : 0;
  return poles + apart >= (phasesOf(carrier) === 3 ? 4 : 2);
}
