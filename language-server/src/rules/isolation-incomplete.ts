import { cannotBeIsolated, type StaysLive } from "../circuit/always-live.js";
import { type Circuit, type Terminal, terminalOf, terminalsOf } from "../circuit/circuit.js";
import { isolate } from "../circuit/cuts.js";
import { isBeforeBar } from "../circuit/inside.js";
import type { Piece } from "../circuit/piece.js";
import type { Plant } from "../circuit/plant.js";
import { isUndecided, uselessOnTheWay } from "../circuit/undecided.js";
import { flagOf, wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Judge } from "./judge.js";
import { mainSwitchFixes } from "./main-switch.js";
import { idsOf, listed } from "./phrases.js";
import { type Fix, type Missing, type Outcome, type Related, rule } from "./rule.js";

const ownSwitch = "built-in-dc-isolator";

/** Something that people work on, with the terminals that have to be dead for it. */
interface IsolationSubject {
  readonly plant: Plant;
  readonly circuit: Circuit;
  readonly item: Item;
  readonly terminals: readonly Terminal[];
}

function* subjects({ circuit, plants }: Piece): Generator<IsolationSubject> {
  for (const plant of plants)
    for (const item of workedOn(plant)) {
      if (terminalsOf(circuit, item).some(({ links }) => links.length > 0))
        yield { plant, circuit, item, terminals: terminalsToKill(circuit, item) };
    }
}

function workedOn(plant: Plant): Item[] {
  return [
    ...plant.inverters.map(({ inverter }) => inverter),
    ...plant.batteries.map(({ battery }) => battery),
    ...plant.generators.map(({ generator }) => generator),
    ...plant.boards.map(({ item }) => item),
    ...plant.meters.filter((meter) => !isSuppliers(meter)),
    ...plant.changeovers,
    ...plant.surge.map(({ spd }) => spd),
  ];
}

/** The supplier's own meter stands before every switch of the installation, and only the supplier works on it. */
function isSuppliers(meter: Item): boolean {
  return flagOf(meter, "existing") === true || (wordOf(meter, "measures") ?? "generation") !== "generation";
}

/**
 * A board is worked on behind its main switch; what stands before it is the supplier's to switch off. An inverter with
 * a d.c. switch of its own is worked on behind that.
 */
function terminalsToKill(circuit: Circuit, item: Item): readonly Terminal[] {
  if (item.kind === "inverter" && flagOf(item, ownSwitch) === true)
    return terminalsOf(circuit, item).filter((terminal) => terminal.item.kind !== "tracker");
  if (item.kind !== "board") return terminalsOf(circuit, item);
  const bar = terminalOf(circuit, item, "bar");
  const behind = item.children.filter((child) => !isBeforeBar(child));
  return [...(bar ? [bar] : []), ...behind.flatMap((child) => terminalsOf(circuit, child))];
}

export const isolationIncomplete = rule<IsolationSubject>({
  id: "isolation-incomplete",
  section: "D.c. cables, connectors, isolation",
  severity: "error",
  title: "Everything that people work on can be made dead by some set of isolating devices.",
  what: "Follows every source through the circuit with all devices open that may be relied upon, in every position of the changeovers: strings, batteries, the supply, generating units, and whatever an inverter passes on. A source that still reaches an inverter, a board behind its main switch, a battery from outside, a generation meter, a changeover or a surge protective device of the a.c. side is named, with the devices that keep the others off and those on its way that do not count. Surge protective devices of the array have a rule of their own. Wired as written; dead is proved on site.",
  why: "There is no safe moment to work on something that cannot be made dead, and a label that says otherwise kills.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "462.1, isolation of every live conductor; 537.1.1", basis: "memory" },
      { title: "BS 7671:2018", clause: "712.537.2.101, inverter isolated from both its sides", basis: "read" },
      { title: "Electricity at Work Regulations 1989", clause: "regulation 12", basis: "memory" },
    ],
    iec: [
      { title: "IEC 60364-4-46", clause: "462.1, isolation of every live conductor", basis: "memory" },
      { title: "IEC 60364-7-712", clause: "712.537, inverter isolated from both its sides", basis: "memory" },
    ],
  },
  examples: {
    holds: `string S1 is 10 x Hollin430
isolator Q1 is RotaryDc32
inverter INV is Fell5
battery BAT is Stack51
isolator Q2 is LeverDc200
run W1 from S1 to Q1: 9 m of Solar4
run W2 from Q1 to INV.pv1: 1 m of Solar4
run W3 from BAT to Q2: 0.3 m of Lead35
run W4 from Q2 to INV.battery: 1.5 m of Lead35
`,
    breaks: `string S1 is 10 x Hollin430
isolator Q1 is RotaryDc32
inverter INV is Fell5
battery BAT is Stack51
run W1 from S1 to Q1: 9 m of Solar4
run W2 from Q1 to INV.pv1: 1 m of Solar4
run W3 from BAT to INV.battery: 1.5 m of Lead35
`,
  },
  over: "piece",
  subjects,
  thing: ({ item }) => item,
  judge: judgeIsolation,
});

function judgeIsolation(subject: IsolationSubject, judge: Judge): Outcome {
  const { circuit, item, terminals } = subject;
  const reaching = cannotBeIsolated(circuit, item, terminals).filter(({ arrival }) => arrival.source.item !== item);
  if (reaching.length === 0) return judge.holds("whatever reaches it can be kept off");
  const isCertain = (each: StaysLive): boolean => !isUndecided(circuit, each) && !isBehindOwnSwitch(each, item);
  const certain = perSource(reaching.filter(isCertain));
  if (certain.length > 0) return staysLive(subject, certain, judge);
  const undecided = perSource(reaching);
  return judge.notChecked(
    `whether ${listed(undecided.map(({ arrival }) => arrival.source.id))} can be kept off it`,
    ...missingOf(undecided, subject),
  );
}

/** A main switch where a board has none; what else keeps sources off has rules of its own, which offer it. */
function isolationFixes({ plant, circuit, item }: IsolationSubject, judge: Judge): Fix[] {
  if (item.kind !== "board") return [];
  const after = (changed: Circuit): Outcome =>
    judgeIsolation({ plant, circuit: changed, item, terminals: terminalsToKill(changed, item) }, judge);
  return mainSwitchFixes(plant, circuit, item, after, judge);
}

/** At an inverter that does not say whether it has a d.c. switch of its own, what reaches its trackers is undecided. */
function isBehindOwnSwitch({ terminal }: StaysLive, item: Item): boolean {
  return terminal.item.kind === "tracker" && item.kind === "inverter" && flagOf(item, ownSwitch) === undefined;
}

/** Each source once, where it arrives by conductors if it does so anywhere. */
function perSource(all: readonly StaysLive[]): StaysLive[] {
  const found = new Map<Item, StaysLive>();
  for (const each of all) {
    const { source, through } = each.arrival;
    const known = found.get(source.item);
    if (!known || (known.arrival.through !== "conductor" && through === "conductor")) found.set(source.item, each);
  }
  return [...found.values()];
}

function missingOf(all: readonly StaysLive[], { circuit, item }: IsolationSubject): Missing[] {
  const found = new Map<string, Missing>();
  const add = (thing: Item, property: string): void => {
    found.set(`${thing.id} ${property}`, { thing, property });
  };
  for (const each of all) {
    for (const { device, missing } of uselessOnTheWay(circuit, each)) if (missing) add(device, missing);
    if (isBehindOwnSwitch(each, item)) add(item, ownSwitch);
  }
  return [...found.values()];
}

function staysLive(subject: IsolationSubject, reaching: readonly StaysLive[], judge: Judge): Outcome {
  const { circuit, item } = subject;
  // Of an inverter people ask what keeps the other sides off; elsewhere that is the same as for the inverter.
  const [set] = item.kind === "inverter" ? isolate(circuit, item).cuts : [];
  const open = set && set.length > 0 ? `With ${idsOf(set)} open` : "Whatever is opened";
  const most = 4;
  const named = reaching
    .slice(0, most)
    .map(({ arrival: { source, inverters }, terminal }) =>
      inverters.length > 0
        ? `${source.id} through ${inverters.map(({ id }) => id).join(" and ")}`
        : terminal.item === item
          ? source.id
          : `${source.id} at ${terminal.id}`,
    );
  const more = reaching.length > most ? [`${reaching.length - most} more`] : [];
  const sources = listed([...named, ...more]);
  const useless = new Map(
    reaching.slice(0, most).flatMap((each) => uselessOnTheWay(circuit, each).map((one) => [one.device, one] as const)),
  );
  return judge.finding({
    what: `${item.id} cannot be made dead. ${open}, ${sources} still ${named.length + more.length > 1 ? "reach" : "reaches"} it.`,
    why: "Whoever works on it works on something live.",
    todo: `Put an isolator that opens every live conductor between it and ${listed(reaching.slice(0, most).map(({ arrival }) => arrival.source.id))}.`,
    spot: { thing: item, word: "name" },
    related: [
      ...[...useless.values()].slice(0, most).map(
        ({ device, why, missing }): Related => ({
          spot: missing ? { thing: device, word: "name" } : { thing: device, property: "poles" },
          message: `${device.id} on the way does not count: ${why}`,
        }),
      ),
      ...reaching
        .slice(0, most)
        .map(
          ({ arrival }): Related => ({ spot: { thing: arrival.source.item, word: "name" }, message: "still feeds it" }),
        ),
    ],
    fixes: (asked) => isolationFixes(subject, asked),
  });
}
