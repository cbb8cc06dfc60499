import type { Plant } from "../circuit/plant.js";
import type { Run } from "../design/things.js";
import { celsius } from "../physics/constants.js";
import { armourResistance, earthLoop, runLoop } from "../physics/earth-loop.js";
import type { Derived, Source } from "../physics/figure.js";
import { tabulated } from "../physics/make.js";
import { coldResistance, protectiveConductor } from "./earth-path.js";
import type { Judge } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import { cableOf, neededLength } from "./run-facts.js";
import { runsAlong, type SupplyWay } from "./supply-way.js";

const reference: Source = { title: "IEC 60228", clause: "resistances at 20 °C", basis: "read" };
const cold = tabulated("Ta", celsius(20), "temperature", "degC", "conductors when nothing has warmed them", reference);

/**
 * Earth fault loop impedance (Ω) that the design has at the end of a way while its conductors are cold, as they are when
 * somebody measures. Throws NotKnown naming all that is missing.
 */
export function coldLoopBehind(way: SupplyWay, plant: Plant, judge: Judge): Derived {
  const missing = new MissingFacts();
  const external = missing.orElse(() => judge.need([way.supply, "external-loop-impedance"])[0]);
  const runs = runsAlong(way).map((run) => missing.orElse(() => coldLoopOf(run, plant, judge)));
  missing.stop();
  return earthLoop(external!, runs as Derived[]);
}

function coldLoopOf(run: Run, plant: Plant, judge: Judge): Derived {
  const cable = cableOf(run);
  const missing = new MissingFacts();
  const length = missing.orElse(() => neededLength(run));
  const areas = missing.orElse(() => judge.need([cable, "conductor-area"]));
  const protective = missing.orElse(() => protectiveConductor(run, cable, plant));
  missing.stop();
  const line = coldResistance(cable, areas![0], judge);
  const { kind, area } = protective!;
  const back = kind === "core" ? coldResistance(cable, area, judge) : armourResistance(area, cold);
  return runLoop({ length: length!, line, protective: back });
}
