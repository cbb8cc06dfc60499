import type { Terminal } from "../circuit/circuit.js";
import { type FeedTree, pathTo } from "../circuit/feed.js";
import type { BoardCircuit, Plant } from "../circuit/plant.js";
import type { Item, Part } from "../design/things.js";
import { isNoWorse } from "./device-parts.js";
import { unitName, unitsThrough } from "./feeding-units.js";
import type { ChosenWord, Judge } from "./judge.js";
import { isSpare, type Landing, landingOf, newWays, spareWays } from "./landing.js";
import { type Finding, type Fix, type Outcome, rule } from "./rule.js";
import { circuitsBehind, circuitText } from "./shared-circuits.js";
import { residualAlong } from "./supply-way.js";

/** A unit with the tree that it feeds into. */
interface Subject {
  readonly plant: Plant;
  readonly tree: FeedTree;
  readonly unit: Terminal;
}

function* subjects(plant: Plant): Generator<Subject> {
  const seen = new Set<Terminal>();
  for (const tree of plant.trees)
    for (const unit of unitsThrough(tree, tree.root)) {
      if (seen.has(unit)) continue;
      seen.add(unit);
      yield { plant, tree, unit };
    }
}

export const rcdShared = rule<Subject>({
  id: "rcd-shared",
  section: "A.c. side and the existing board",
  severity: "error",
  title: "A generator does not feed in behind an RCD that other circuits share.",
  what: "Follows the way from each inverter and generating unit to the supply and looks at every RCD on it, and at the circuits that this RCD feeds besides. Practitioners differ on where a generator may join a board: the setting rcd-side of the site's limits says whether an RCD of its own is accepted, whether it has to join ahead of every RCD, or whether a shared one is a warning only.",
  why: "When a shared RCD opens on a fault in one of the other circuits, the generator is still joined to that circuit and goes on feeding the fault until it notices that the grid is gone.",
  sources: {
    gb: [{ title: "BS 7671:2018", clause: "551.7.1, generators in parallel with the supply", basis: "memory" }],
    iec: [{ title: "IEC 60364-5-55", clause: "551.7.1, generators in parallel with the supply", basis: "memory" }],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S }
board CU is SplitBoard {
    rcd R1 is Rcd63A { way 1: breaker K1 is Breaker16B serves "kitchen sockets" }
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S }
board CU is SplitBoard {
    rcd R1 is Rcd63A {
        way 1: breaker K1 is Breaker16B serves "kitchen sockets"
        way 2: breaker K2 is Breaker25B serves INV
    }
}
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K2 to INV.ac: 10 m of Twin6
`,
  },
  over: "plant",
  subjects,
  thing: ({ unit }) => unitName(unit),
  judge: (subject, judge) => {
    const { tree, unit } = subject;
    const path = pathTo(tree, unit);
    const devices = path ? residualAlong(path) : [];
    if (devices.length === 0) return judge.holds("no RCD on its way");
    const side = judge.setting("rcd-side");
    return devices.map((device) => behind(subject, device, side, judge));
  },
});

function behind(subject: Subject, device: Item, side: ChosenWord, judge: Judge): Outcome {
  const others = circuitsBehind(subject.plant, subject.tree, device, subject.unit);
  const used = others.filter((circuit) => !isSpare(circuit));
  if (used.length > 0) return shared(subject, device, used, side, judge);
  if (others.length > 0) return judge.notChecked(`what ${circuitText(others)} feeds is not said`);
  if (side.word !== "ahead-of-rcds") return judge.holds("an RCD of its own");
  const name = unitName(subject.unit).id;
  return finding(subject, device, judge, {
    what: `${name} feeds in behind ${device.id}; here it has to join ahead of every RCD.`,
    why: "The site wants no generator behind an RCD, whichever it is.",
    todo: "Give it a way ahead of the RCDs, with a device that has no residual current function.",
    related: judge.limitSet("rcd-side", "the site's own choice"),
  });
}

function shared(
  subject: Subject,
  device: Item,
  others: readonly BoardCircuit[],
  side: ChosenWord,
  judge: Judge,
): Finding {
  const name = unitName(subject.unit).id;
  return finding(subject, device, judge, {
    severity: side.word === "shared-noted" ? "warning" : "error",
    what: `${name} feeds in behind ${device.id}, which also feeds ${circuitText(others)}.`,
    why: `After ${device.id} has opened, ${name} may go on feeding the fault in them.`,
    todo: `Give ${name} a way of its own ahead of ${device.id}, or a board of its own.`,
    related: others.slice(0, 5).map((circuit) => ({
      spot: { thing: circuit.device, word: "name" as const },
      message: `behind ${device.id} too: ${circuit.device.id}`,
    })),
  });
}

function finding(
  subject: Subject,
  device: Item,
  judge: Judge,
  said: Pick<Finding, "what" | "why" | "todo"> & Partial<Finding>,
): Finding {
  const landing = landingOf(subject.tree, subject.unit, device);
  return judge.finding({
    spot: landing ? { thing: landing.run, word: landing.end } : { thing: device, word: "name" },
    fixes: (asked) => (landing ? otherWays(subject, landing, device, asked) : []),
    ...said,
  });
}

/** Ways ahead of an RCD that are there, or of a device that has what the RCD did for the unit, as far as it may have it. */
function otherWays(subject: Subject, landing: Landing, device: Item, judge: Judge): Fix[] {
  const isAhead = judge.setting("rcd-side").word === "ahead-of-rcds";
  const holds = (part: Part): boolean =>
    isAhead ? part.kind === "breaker" : part.kind === "rcbo" && isNoWorse(part, device, notOfTheRcd);
  return [...spareWays(subject, landing, device, judge), ...newWays(subject, landing, device, holds, judge)];
}

/** What the device on the way decides, and not the RCD ahead of it. */
const notOfTheRcd = ["rated-current", "poles", "breaking-capacity", "rated-voltage", "curve"];
