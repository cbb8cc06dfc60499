import fc from "fast-check";
import { Dice } from "./random.js";

/** Random installations as text that the language reads: thickly wired, so that there is something to isolate. */
export function installations(devices: { min: number; max: number }): fc.Arbitrary<string> {
  return fc.integer().map((seed) => installation(new Dice(seed), devices));
}

/** Names are S1, B1, L1, D1 … by kind and number; everything hangs on terminal blocks T1 … */
function installation(dice: Dice, { min, max }: { min: number; max: number }): string {
  const lines = ["part Panel is module {}", "part Lead is cable {}"];
  const blocks = dice.between(2, 6);
  const count = dice.between(min, max);
  let devices = 0;
  let runs = 0;
  const run = (from: string, to: string): void => {
    if (from !== to) lines.push(`run W${++runs} from ${from} to ${to}: 1 m of Lead`);
  };
  const block = (): string => `T${dice.between(1, blocks)}.in`;
  const isolator = (from: string, to: string): void => {
    const name = `D${++devices}`;
    lines.push(`isolator ${name} { poles: ${dice.once(6) ? 1 : 2} }`);
    run(from, `${name}.in`);
    run(`${name}.out`, to);
  };
  /** Hangs a terminal on a block: through a device as a rule, straight at times, seldom not at all. */
  const hang = (terminal: string): void => {
    if (dice.once(10)) return;
    if (devices < count && !dice.once(4)) isolator(terminal, block());
    else run(terminal, block());
  };

  for (let number = 1; number <= blocks; number++) lines.push(`terminal-block T${number}`);
  const sources = ["string S1 is 3 x Panel", "string S2 is 3 x Panel", "battery B1 {}", "supply G1 { phases: 1 }"];
  sources.push("generator E1 { energy-source: wind }", "generator E2 { energy-source: sun  runs-without-grid: yes }");
  for (const line of sources) {
    if (dice.once(3)) continue;
    lines.push(line);
    hang(line.split(" ")[1]!);
  }
  for (let number = 1; number <= dice.below(3); number++) {
    const name = `V${number}`;
    lines.push(
      `inverter ${name} { built-in-dc-isolator: ${dice.once(3) ? "yes" : "no"}  tracker pv1 {} tracker pv2 {} battery {} ac {} backup {} }`,
    );
    for (const port of ["pv1", "pv2", "battery", "ac", "backup"]) if (!dice.once(3)) hang(`${name}.${port}`);
  }
  for (let number = 1; number <= dice.below(3); number++) {
    lines.push(`changeover C${number} { poles: 2  off-position: ${dice.once(3) ? "no" : "yes"} }`);
    for (const end of ["grid", "backup", "out"]) if (!dice.once(6)) run(`C${number}.${end}`, block());
  }
  for (let number = 1; number <= 2; number++) {
    lines.push(`load L${number} {}`);
    hang(`L${number}`);
  }
  while (devices < count) isolator(block(), block());
  return lines.join("\n");
}
