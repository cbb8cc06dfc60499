import type { Terminal } from "../circuit/circuit.js";
import type { Run } from "../design/things.js";
import { counted } from "../physics/make.js";
import { formatFigure } from "../physics/working.js";
import type { Judge } from "./judge.js";
import { listed, stated } from "./phrases.js";
import { type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";
import { type TerminalSubject, terminalsOfArrays, terminalsOfPlant } from "./terminal-subjects.js";

export const terminalConductors = rule<TerminalSubject>({
  id: "terminal-conductors",
  section: "D.c. cables, connectors, isolation",
  severity: "warning",
  title: "No terminal holds more conductors, or other sizes, than it is made for.",
  what: "Counts the runs that land on each terminal of isolators, fuses, combiners and surge protective devices, and on the a.c. side and in the leads of batteries of breakers, RCDs, meters, changeovers, terminal blocks and boards too, and looks at their cross-sections. Ports and batteries are looked at where they state what their terminals are made for, or hold more than one conductor. The capacity of a terminal is a fact of its sheet: where it is not stated, the check is not made. A combiner's array side has one terminal for each of its inputs.",
  why: "A clamp that holds two conductors where it was made for one grips neither for long. A loose joint heats up, and on the d.c. side it may draw an arc that nothing puts out.",
  sources: {
    gb: [{ title: "BS 7671:2018", clause: "526.2, number and size of conductors at a connection", basis: "memory" }],
    iec: [{ title: "IEC 60364-5-52", clause: "526, electrical connections", basis: "memory" }],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32 { terminal-area: 2.5..16 mm2 }
spd F1 is SurgeDc800 { terminal-area: 2.5..25 mm2 }
inverter INV is Brook4
run W1 from S1 to Q1: 9 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to F1: 0.3 m of Solar4
`,
    breaks: `part RotaryDc25 is isolator {
    supply: dc  rated-voltage: 800 V  rated-current: 25 A  poles: 2
    utilisation-category: DC-PV2  lockable: yes  polarity-sensitive: no
    conductors-per-terminal: 1
}
string S1 is 11 x Hollin430
isolator Q1 is RotaryDc25
spd F1 is SurgeDc800
inverter INV is Brook4
run W1 from S1 to Q1: 9 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to F1: 0.3 m of Solar4
`,
  },
  subjects: terminalsOfArrays,
  alsoInPlants: terminalsOfPlant,
  thing: ({ device }) => device,
  judge: (subject, judge) => {
    const { device } = subject;
    if (!judge.knows(device, "conductors-per-terminal") && !judge.knows(device, "terminal-area"))
      return judge.notChecked(
        "what its terminals are made for is not stated",
        { thing: device, property: "conductors-per-terminal" },
        { thing: device, property: "terminal-area" },
      );
    return eachOf(
      () => numbers(subject, judge),
      () => sizes(subject, judge),
      () => mixed(subject, judge),
    );
  },
});

function numbers({ device, terminals }: TerminalSubject, judge: Judge): Outcome[] {
  const [perTerminal] = judge.need([device, "conductors-per-terminal"]);
  return terminals.map(({ terminal, runs }) => {
    const number = counted("N", runs.length, terminal.id);
    const inputs = device.kind === "combiner" && terminal.name === "in" ? judge.need([device, "inputs"])[0].value : 1;
    const most = inputs === 1 ? perTerminal : counted("Nmax", inputs * perTerminal.value, device.id);
    if (number.value <= most.value) return judge.pass(number, most, terminal.id);
    return judge.finding({
      what: `${terminal.id} holds ${runs.length} conductors of a pole (${listed(runs.map(({ id }) => id))}); it is made for ${formatFigure(most)}.`,
      why: "A clamp that holds more than it is made for works loose, heats up and may arc.",
      todo: "Join them in a terminal block, or land one of them elsewhere.",
      spot: { thing: runs[runs.length - 1]!, word: endAt(runs[runs.length - 1]!, terminal) },
      value: number,
      limit: most,
      related: [stated(device, "conductors-per-terminal", perTerminal)],
    });
  });
}

function sizes({ device, terminals }: TerminalSubject, judge: Judge): Outcome[] {
  const { low, high } = judge.range(device, "terminal-area") ?? judge.unknown(device, "terminal-area");
  return terminals.flatMap(({ terminal, runs }) =>
    runs.map((run) => {
      const area = areaOf(run, judge);
      if (area.value >= low.value * (1 - 1e-9) && area.value <= high.value * (1 + 1e-9))
        return judge.pass(area, high, terminal.id);
      const isThin = area.value < low.value;
      return judge.finding({
        what: `${run.id} brings ${formatFigure(area)} to ${terminal.id}, whose terminals take ${formatFigure(low)} to ${formatFigure(high)}.`,
        why: isThin
          ? "A clamp that closes before it grips leaves the joint loose."
          : "Strands that are cut away to make it fit take the current's way with them.",
        todo: isThin ? "Fit a ferrule or a larger cable." : "Go over a terminal block, or use a cable that fits.",
        spot: { thing: run, word: "cable" },
        value: area,
        limit: isThin ? low : high,
        related: [stated(device, "terminal-area", isThin ? low : high)],
      });
    }),
  );
}

/** Conductors of two sizes under one clamp, where only one size may be there. */
function mixed({ device, terminals }: TerminalSubject, judge: Judge): Outcome | readonly Outcome[] | undefined {
  const shared = terminals.filter(({ terminal, runs }) => runs.length > 1 && !isBar(terminal));
  if (shared.length === 0) return undefined;
  return shared.flatMap(({ terminal, runs }): Outcome[] => {
    const areas = new Map(runs.map((run) => [Math.round(areaOf(run, judge).value * 1e8), run]));
    if (areas.size < 2) return [];
    if (judge.needFlag(device, "mixed-sizes")) return [judge.holds("made for different sizes together")];
    const texts = [...areas.values()].map((run) => `${run.id} with ${formatFigure(areaOf(run, judge))}`);
    return [
      judge.finding({
        what: `${terminal.id} holds ${listed(texts)} in one terminal; its maker does not allow different sizes together.`,
        why: "The clamp rests on the thicker conductor and leaves the thinner one loose.",
        todo: "Use one size, or join them in a terminal block.",
        spot: { thing: runs[runs.length - 1]!, word: "cable" },
        related: [{ spot: { thing: device, property: "mixed-sizes" }, message: `${device.id}, mixed-sizes: no` }],
      }),
    ];
  });
}

/** A combiner's array side: one terminal for each input, so that two runs there do not share a clamp. */
function isBar({ item, name }: Terminal): boolean {
  return item.kind === "combiner" && name === "in";
}

function areaOf(run: Run, judge: Judge) {
  if (!run.cable) return judge.unknown(run, "cable");
  return judge.need([run.cable, "conductor-area"])[0];
}

function endAt(run: Run, terminal: Terminal): "from" | "to" {
  return run.from?.item === terminal.item ? "from" : "to";
}
