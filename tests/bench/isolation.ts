import { performance } from "node:perf_hooks";
import { liveWhateverIsOpened } from "../../language-server/src/circuit/always-live.js";
import { buildCircuit } from "../../language-server/src/circuit/build.js";
import type { Circuit } from "../../language-server/src/circuit/circuit.js";
import { isolate } from "../../language-server/src/circuit/cuts.js";
import { traceLive } from "../../language-server/src/circuit/live.js";
import { plants } from "../../language-server/src/circuit/plants.js";
import { buildDesign, type Design } from "../../language-server/src/design/design.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";

/**
 * A row of houses on one supply: each with its own board, inverter, two strings, battery and backup board, and with so
 * many switching devices altogether.
 */
function rowOfHouses(devices: number): string {
  const lines = ["part Panel is module {}", "part Lead is cable {}", "supply GRID { phases: 1 }", "terminal-block BAR"];
  lines.push("run T0 from GRID to BAR: 1 m of Lead");
  const perHouse = 10;
  for (let house = 1; house <= Math.max(1, Math.round(devices / perHouse)); house++) {
    const n = `_${house}`;
    lines.push(
      `string A${n} is 10 x Panel`,
      `string B${n} is 10 x Panel`,
      `battery BAT${n} {}`,
      `inverter INV${n} { tracker pv1 {} tracker pv2 {} battery {} ac {} backup {} }`,
      `isolator QA${n} { poles: 2 }`,
      `isolator QB${n} { poles: 2 }`,
      `isolator QC${n} { poles: 2 }`,
      `isolator QD${n} { poles: 2 }`,
      `board CU${n} {`,
      "    isolator MS { poles: 2 }",
      '    rcd R1 { poles: 2  way 1: breaker K1 serves "sockets" { poles: 2 } }',
      `    way 9: rcbo K9 serves INV${n} { poles: 2 }`,
      "}",
      `board NEW${n} {`,
      "    isolator MS { poles: 2 }",
      '    way 1: rcbo K1 serves "lights" { poles: 2 }',
      "}",
      `run W1${n} from A${n} to QA${n}: 9 m of Lead`,
      `run W2${n} from QA${n} to INV${n}.pv1: 1 m of Lead`,
      `run W3${n} from B${n} to QB${n}: 9 m of Lead`,
      `run W4${n} from QB${n} to INV${n}.pv2: 1 m of Lead`,
      `run W5${n} from BAT${n} to QC${n}: 1 m of Lead`,
      `run W6${n} from QC${n} to INV${n}.battery: 1 m of Lead`,
      `run W7${n} from INV${n}.ac to QD${n}: 1 m of Lead`,
      `run W8${n} from QD${n} to CU${n}.K9: 9 m of Lead`,
      `run W9${n} from INV${n}.backup to NEW${n}: 1 m of Lead`,
      `run W10${n} from BAR to CU${n}: 3 m of Lead`,
    );
  }
  return lines.join("\n");
}

/** A ladder: two rails with a device on every side and every rung, the worst that is still an installation. */
function ladder(devices: number): string {
  const lines = ["part Lead is cable {}", "supply GRID { phases: 1 }", "load SHED {}"];
  const rungs = Math.max(2, Math.round(devices / 3));
  let runs = 0;
  const run = (from: string, to: string): void => {
    lines.push(`run W${++runs} from ${from} to ${to}: 1 m of Lead`);
  };
  for (let rung = 1; rung <= rungs; rung++) {
    lines.push(`terminal-block A${rung}`, `terminal-block B${rung}`, `isolator R${rung} { poles: 2 }`);
    run(`A${rung}.in`, `R${rung}.in`);
    run(`R${rung}.out`, `B${rung}.in`);
    if (rung === 1) continue;
    for (const rail of ["A", "B"]) {
      const name = `${rail}Q${rung}`;
      lines.push(`isolator ${name} { poles: 2 }`);
      run(`${rail}${rung - 1}.in`, `${name}.in`);
      run(`${name}.out`, `${rail}${rung}.in`);
    }
  }
  run("GRID", "A1.in");
  run("GRID", "B1.in");
  run(`A${rungs}.in`, "SHED");
  run(`B${rungs}.in`, "SHED");
  return lines.join("\n");
}

function read(text: string): Design {
  const file = new SourceFile("file:///row.sun", createChunkParser());
  file.update(text);
  const design = buildDesign([file]);
  if (design.problems.some(({ severity }) => severity === "error")) throw new Error(design.problems[0]!.message);
  return design;
}

/** Median milliseconds of a piece of work, each time on a circuit that nothing is remembered of. */
function measure(design: Design, work: (circuit: Circuit) => void): string {
  const times: number[] = [];
  for (let round = 0; round < 9; round++) {
    const circuit = buildCircuit(design);
    const start = performance.now();
    work(circuit);
    times.push(performance.now() - start);
  }
  return `${times.sort((a, b) => a - b)[4]!.toFixed(1)} ms`.padStart(10);
}

/** Prints what tracing and isolating cost as the number of switching devices grows. */
export function reportIsolation(): void {
  console.log("\nLive and isolated, median of nine, nothing remembered");
  console.log("devices  circuit                build      plant      trace     always     isolate    sets");
  for (const [name, make, target] of [
    ["row of houses", rowOfHouses, "INV_1"],
    ["ladder", ladder, "SHED"],
  ] as const) {
    for (const devices of [10, 100, 1000]) {
      const design = read(make(devices));
      const item = design.names.top.get(target)!;
      const found = isolate(buildCircuit(design), item);
      console.log(
        String(devices).padStart(7),
        ` ${name.padEnd(14)}`,
        measure(design, () => buildCircuit(design)),
        measure(design, (circuit) => plants(design, circuit)),
        measure(design, (circuit) => traceLive(circuit, { light: "day", supply: "grid", open: new Set() })),
        measure(design, (circuit) => liveWhateverIsOpened(circuit)),
        measure(design, (circuit) => isolate(circuit, item)),
        `  ${found.cuts.length}${found.complete ? "" : " of more"}, smallest ${found.cuts[0]?.length ?? "none"}`,
      );
    }
  }
}
