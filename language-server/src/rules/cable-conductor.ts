import { fact } from "../design/facts.js";
import type { Part } from "../design/things.js";
import { resistanceAtTemperature } from "../physics/conductor.js";
import { type ConductorKind, tableResistance } from "../physics/conductor-tables.js";
import { formatValue } from "../physics/display.js";
import type { Derived, Given } from "../physics/figure.js";
import { type Judge, NotKnown } from "./judge.js";

/** The conductor of a cable at the temperature that drops are computed at. */
export interface Conductor {
  readonly kind: ConductorKind;
  /** One conductor, Ω/m. */
  readonly perMetre: Derived;
}

const memory = new WeakMap<Judge, Map<Part, Conductor>>();

/** Worked out once an assessment: many runs share a cable. Throws NotKnown for a conductor that no table gives. */
export function conductorOf(cable: Part, judge: Judge): Conductor {
  let known = memory.get(judge);
  if (!known) {
    known = new Map();
    memory.set(judge, known);
  }
  let conductor = known.get(cable);
  if (!conductor) {
    conductor = workOut(cable, judge);
    known.set(cable, conductor);
  }
  return conductor;
}

function workOut(cable: Part, judge: Judge): Conductor {
  const [area] = judge.need([cable, "conductor-area"]);
  const conductorClass = judge.needWord(cable, "conductor-class");
  const coating = judge.needWord(cable, "conductor-coating");
  const kind = { conductorClass, coating };
  const at20 = tableResistance(kind, area.value);
  if (!at20) {
    const size = formatValue(area.value, "area", area.unit);
    throw new NotKnown([], `IEC 60228 gives no resistance for ${size} ${conductorClass}, ${coating}`);
  }
  const hot = judge.limit("hot-conductor-temperature");
  return { kind, perMetre: resistanceAtTemperature(withAssumption(at20, cable), hot) };
}

/** A table's figure says when its row was chosen by an assumption: it is then listed with the results. */
export function withAssumption(tabulated: Given, cable: Part): Given {
  const origin = fact(cable, "conductor-coating")?.origin;
  if (origin?.kind !== "assumed") return tabulated;
  return { ...tabulated, origin: { ...origin, source: tabulated.origin.source } };
}
