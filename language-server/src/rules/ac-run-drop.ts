import type { Part, Run } from "../design/things.js";
import {
  acRunDrop,
  computedDrop,
  type DropColumn,
  type DropPerMetre,
  findDropColumn,
  phaseDrop,
  tabulatedDrop,
} from "../physics/ac-drop.js";
import { formatValue } from "../physics/display.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { type Judge, NotKnown } from "./judge.js";
import { cableOf, neededLength, needFacts } from "./run-facts.js";

/** A run with what flows in it, as its drop, or its rise against the flow, is worked out. */
export interface LoadedAcRun {
  readonly run: Run;
  /** Per line conductor, A. */
  readonly current: Figure;
  /** Three where three equal line currents leave the neutral idle. */
  readonly loadedConductors: 2 | 3;
}

/** Voltage to neutral (V) along a run if it were laid in this cable. Throws NotKnown naming what the sum lacks. */
export function dropToNeutral(loaded: LoadedAcRun, cable: Part, judge: Judge): Derived {
  const perMetre = dropPerMetre(loaded, cable, judge);
  const drop = acRunDrop({ length: neededLength(loaded.run), current: loaded.current, perMetre });
  return loaded.loadedConductors === 2 ? drop : phaseDrop(drop);
}

/** In the cable that it is laid in. */
export function dropAlong(loaded: LoadedAcRun, judge: Judge): Derived {
  neededLength(loaded.run);
  return dropToNeutral(loaded, cableOf(loaded.run), judge);
}

function dropPerMetre(loaded: LoadedAcRun, cable: Part, judge: Judge): DropPerMetre {
  needFacts(judge, [cable, "conductor-area"], [cable, "type"], [cable, "insulation"]);
  const [area] = judge.need([cable, "conductor-area"]);
  return dropOfSize(loaded, cable, area, judge);
}

/** As `dropToNeutral`, for the same sort of cable in another cross-section. */
export function dropOfSize(loaded: Omit<LoadedAcRun, "current">, cable: Part, area: Given, judge: Judge): DropPerMetre {
  const { ruleSet } = judge;
  const insulation = judge.needWord(cable, "insulation");
  const question = { insulation, type: judge.needWord(cable, "type"), loadedConductors: loaded.loadedConductors };
  const isCopper = judge.word(cable, "conductor-material") !== "aluminium";
  const method = judge.word(loaded.run, "method");
  const printed = isCopper
    ? method === undefined
      ? worst(ruleSet.ac.drop, question, area.value)
      : tabulated(findDropColumn(ruleSet.ac.drop, { ...question, method }), area.value)
    : undefined;
  return printed ?? computed(loaded, cable, area, insulation, judge);
}

function tabulated(column: DropColumn | undefined, area: number): DropPerMetre | undefined {
  return column && tabulatedDrop(column, area);
}

type Question = Pick<DropColumn, "insulation" | "loadedConductors"> & { readonly type: string };

/** Where it is not said how a run is laid, the way in which it loses most. */
function worst(columns: readonly DropColumn[], question: Question, area: number): DropPerMetre | undefined {
  let found: DropPerMetre | undefined;
  for (const column of columns) {
    if (column.insulation !== question.insulation || column.loadedConductors !== question.loadedConductors) continue;
    if (!column.types.includes(question.type)) continue;
    const drop = tabulatedDrop(column, area);
    if (drop && (!found || drop.z.value > found.z.value)) found = drop;
  }
  return found;
}

function computed(
  { loadedConductors }: Omit<LoadedAcRun, "current">,
  cable: Part,
  area: Given,
  insulation: string,
  judge: Judge,
): DropPerMetre {
  const { ac, title } = judge.ruleSet;
  const temperature = ac.conductorTemperature.get(insulation);
  if (!temperature) throw new NotKnown([], `${title} gives no conductor temperature for ${insulation}`);
  needFacts(judge, [cable, "conductor-class"], [cable, "conductor-coating"]);
  if (judge.word(cable, "conductor-material") === "aluminium")
    throw new NotKnown([], `the tables give no resistance of aluminium (${cable.name})`);
  const kind = {
    conductorClass: judge.needWord(cable, "conductor-class"),
    coating: judge.needWord(cable, "conductor-coating"),
  };
  const drop = computedDrop({ kind, crossSection: area.value, temperature, reactance: ac.reactance, loadedConductors });
  if (drop) return drop;
  throw new NotKnown([], `no table gives the drop of ${cable.name} in ${formatValue(area.value, "area", area.unit)}`);
}
