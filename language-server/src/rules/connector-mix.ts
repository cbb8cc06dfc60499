import type { Zone } from "../circuit/array.js";
import { textOf } from "../design/facts.js";
import type { End, Item, Run, Thing } from "../design/things.js";
import { liveRuns } from "./array-runs.js";
import { rule } from "./rule.js";
import { needFacts } from "./run-facts.js";

/** A pair of plug-and-socket halves: the end of a run, and what it is mated with. */
export interface MatedPair {
  readonly run: Run;
  /** The property that says which half the run brings. */
  readonly property: "start-connector" | "end-connector";
  /** The string or the inverter at that end. */
  readonly item: Item;
  /** What states the other half: the module, or the inverter. */
  readonly other: Thing;
}

function* subjects(zone: Zone): Generator<MatedPair> {
  for (const { run } of liveRuns(zone)) {
    yield* pairAt(run, run.from, "start-connector");
    yield* pairAt(run, run.to, "end-connector");
  }
}

function* pairAt(run: Run, end: End | undefined, property: MatedPair["property"]): Generator<MatedPair> {
  const item = end?.item;
  if (item?.kind === "string") yield { run, property, item, other: item.part ?? item };
  else if (item?.kind === "tracker" && item.parent) yield { run, property, item, other: item.parent };
}

export const connectorMix = rule<MatedPair>({
  id: "connector-mix",
  section: "D.c. cables, connectors, isolation",
  severity: "error",
  title: "Mated connector halves are of one make and type.",
  what: "Compares the plug-and-socket half at the end of a run with the one on the module or the inverter that it is mated with. What is not stated is not checked: looks alike is no evidence.",
  why: "Halves of two makes fit into each other and are still not made for each other: different springs, metals and tolerances. The joint heats up under years of daily current, and it is a frequent finding of regulators' audits.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "712.526.1, connectors of one type from one maker", basis: "memory" },
      { title: "audit lists of Australian regulators", clause: "mismatched d.c. connectors", basis: "read" },
    ],
    iec: [
      {
        title: "IEC 62548-1",
        clause: "plugs and sockets mated are of the same type from the same maker",
        basis: "memory",
      },
      { title: "audit lists of Australian regulators", clause: "mismatched d.c. connectors", basis: "read" },
    ],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 14 m of Solar4 { start-connector: "Bayonet P4"  end-connector: "Bayonet P4" }
`,
    breaks: `string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 14 m of Solar4 { start-connector: "Latch C3"  end-connector: "Bayonet P4" }
`,
  },
  subjects,
  thing: ({ run }) => run,
  judge: ({ run, property, item, other }, judge) => {
    if (judge.word(item, "connection") === "terminals")
      return judge.notApplicable("its conductors land on clamps, where nothing is mated");
    needFacts(judge, [run, property], [other, "connector"]);
    const half = textOf(run, property) ?? judge.unknown(run, property);
    const mate = textOf(other, "connector") ?? judge.unknown(other, "connector");
    if (sameWords(half, mate)) return judge.holds("halves of one make and type");
    return judge.finding({
      what: `At ${item.id}, ${run.id} brings "${half}" to "${mate}".`,
      why: "Halves of two makes fit and are not made for each other: the joint heats up and can burn.",
      todo: "Use the same make and type on both sides, or a short lead that its maker fits with both.",
      spot: { thing: run, property },
      related: [{ spot: { thing: other, property: "connector" }, message: `"${mate}"` }],
      fixes: () => [
        {
          title: `Fit "${mate}" to ${run.id}`,
          preview: "both halves of one make and type",
          does: "set-property",
          thing: run,
          property,
          value: `"${mate}"`,
        },
      ],
    });
  },
});

/** Spelling of blanks and capitals does not make another connector. */
function sameWords(one: string, other: string): boolean {
  return plain(one) === plain(other);
}
function plain(text: string): string {
  return text.trim().replace(/\s+/g, " ").toLowerCase();
}
