import type { Terminal } from "../circuit/circuit.js";
import type { FeedTree } from "../circuit/feed.js";
import type { BoardCircuit, Plant } from "../circuit/plant.js";
import { flagOf } from "../design/facts.js";
import type { Item, Part } from "../design/things.js";
import { joinedCurrent } from "../physics/board-current.js";
import type { Derived } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import { ifKnown } from "./ac-cables.js";
import { devicesBetween } from "./between-sources.js";
import { unitName, unitNames } from "./feeding-units.js";
import type { Judge } from "./judge.js";
import { landingOf, newWays, spareWays } from "./landing.js";
import { listed } from "./phrases.js";
import { exportCurrent } from "./port-currents.js";
import { type Fix, type Outcome, rule } from "./rule.js";

/** A way of a board on which something feeds in before any other board. */
interface Subject {
  readonly plant: Plant;
  readonly tree: FeedTree;
  readonly circuit: BoardCircuit;
  readonly units: readonly Terminal[];
}

function* subjects(plant: Plant): Generator<Subject> {
  const circuits = new Map(plant.boards.flatMap((board) => board.circuits.map((each) => [each.device, each] as const)));
  for (const { device, tree, units } of devicesBetween(plant, (item) => circuits.has(item))) {
    const circuit = circuits.get(device)!;
    const own = new Set([...circuit.beyond.gridPorts, ...circuit.beyond.generators]);
    const landing = units.filter(({ item }) => own.has(item));
    if (landing.length > 0) yield { plant, tree, circuit, units: landing };
  }
}

export const sharedCircuit = rule<Subject>({
  id: "shared-circuit",
  section: "A.c. side and the existing board",
  severity: "error",
  title: "A generator has a circuit of its own.",
  what: "Looks at each way of a board on which an inverter or generating unit feeds in, and at what else hangs on it: loads that are wired to it, and what the way is said to serve.",
  why: "The device of the way limits what the board delivers, not what the generator adds. Sockets on the same circuit can draw the sum through a cable that only the device protects.",
  sources: {
    gb: [{ title: "BS 7671:2018", clause: "551.7.2, generators and final circuits", basis: "memory" }],
    iec: [{ title: "IEC 60364-5-55", clause: "551.7.2, generators and final circuits", basis: "memory" }],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S }
board CU is SplitBoard {
    existing: yes
    way 4: breaker K4 is Breaker32B serves "garage sockets"
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S }
board CU is SplitBoard {
    existing: yes
    way 4: breaker K4 is Breaker32B serves "garage sockets"
}
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K4 to INV.ac: 10 m of Twin6
`,
  },
  over: "plant",
  subjects,
  thing: ({ circuit }) => circuit.device,
  judge: (subject, judge) => {
    const { circuit, units } = subject;
    const others = othersOn(subject);
    if (others.length > 0) return shares(subject, others, judge);
    const { board, device, serves, servesText } = circuit;
    if (serves || servesText !== undefined) return judge.holds("serves nothing else");
    const wasThere = [board, device].some((item) => flagOf(item, "existing") === true);
    if (!wasThere) return judge.holds("nothing else is wired to it");
    return judge.notChecked(`what ${device.id} serves besides ${unitNames(units)} is not said`);
  },
});

/** Loads on the way, and what its words name besides the units. */
function othersOn({ circuit, units }: Subject): string[] {
  const { serves, servesText, beyond } = circuit;
  const found = new Set(beyond.loads.map(({ id }) => id));
  if (serves && !isUnit(serves, units)) found.add(serves.id);
  const names = [...found];
  if (servesText !== undefined && !meansUnit(servesText, units)) names.push(`"${servesText}"`);
  return names;
}

function isUnit(item: Item, units: readonly Terminal[]): boolean {
  return units.some((unit) => unit.item === item || unitName(unit) === item);
}

const generating = /\b(solar|pv|photovoltaics?|inverters?|generators?|batter(y|ies)|storage|microgeneration)\b/i;

/** Whether words on a chart mean the unit itself: a chart says "solar" where the design says INV. */
function meansUnit(text: string, units: readonly Terminal[]): boolean {
  return generating.test(text) || units.some((unit) => text.includes(unitName(unit).id));
}

function shares(subject: Subject, others: readonly string[], judge: Judge): Outcome {
  const { tree, circuit, units } = subject;
  const { device } = circuit;
  const sum = ifKnown(() => joinedOn(subject, judge));
  const more = sum ? ` Together they can load its cable with ${formatFigure(sum)}.` : "";
  const landing = units[0] && landingOf(tree, units[0], device);
  return judge.finding({
    what: `${unitNames(units)} ${units.length > 1 ? "share" : "shares"} the circuit of ${device.id} with ${listed(others)}.${more}`,
    why: "What the generator adds does not pass the device, so that nothing protects the cable from the sum.",
    todo: `Give ${unitNames(units)} a way of ${units.length > 1 ? "their" : "its"} own.`,
    spot: landing ? { thing: landing.run, word: landing.end } : { thing: device, word: "name" },
    value: sum,
    related: [{ spot: { thing: device, word: "name" }, message: `${device.id} serves ${listed(others)}` }],
    fixes: (asked) => moves(subject, asked),
  });
}

/** Landing the unit on another way mends it where its run carries nothing but the unit. */
function moves(subject: Subject, judge: Judge): readonly Fix[] {
  const { tree, circuit, units } = subject;
  const [unit] = units;
  const landing = unit && landingOf(tree, unit, circuit.device);
  if (!landing || circuit.beyond.loads.length > 0) return [];
  const question = { ...subject, unit };
  // What is nested in an RCD would lose it on a way of its own.
  const isAlike = ({ kind }: Part): boolean => circuit.rcds.length === 0 && kind === landing.device.kind;
  return [
    ...spareWays(question, landing, circuit.device, judge),
    ...newWays(question, landing, circuit.device, isAlike, judge),
  ];
}

function joinedOn({ tree, circuit, units }: Subject, judge: Judge): Derived | undefined {
  const [rating] = judge.need([circuit.device, "rated-current"]);
  const sent = exportCurrent(units, tree, judge);
  return sent && joinedCurrent(rating, [sent]);
}
