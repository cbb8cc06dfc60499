import { buildCircuit } from "../../language-server/src/circuit/build.js";
import type { Circuit, Terminal } from "../../language-server/src/circuit/circuit.js";
import { buildDesign, type Design } from "../../language-server/src/design/design.js";
import type { Item, Run } from "../../language-server/src/design/things.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";

const parser = createChunkParser();

export interface Wired {
  readonly design: Design;
  readonly circuit: Circuit;
  item(path: string): Item;
  run(id: string): Run;
  terminal(id: string): Terminal;
}

/** A design with its circuit, from text that must be free of mistakes: a test on a misread text would prove nothing. */
export function wired(text: string): Wired {
  const file = new SourceFile("file:///house.sun", parser);
  file.update(text);
  const design = buildDesign([file]);
  const wrong = design.problems.filter(({ id }) => id !== "unused-part");
  if (wrong.length > 0) throw new Error(wrong.map(({ message }) => message).join("\n"));
  const circuit = buildCircuit(design);
  return {
    design,
    circuit,
    item(path) {
      const resolved = design.names.resolve({ path: path.split(".") });
      if (resolved.is !== "item") throw new Error(`no item ${path}`);
      return resolved.item;
    },
    run(id) {
      const run = design.runs.find((candidate) => candidate.id === id);
      if (!run) throw new Error(`no run ${id}`);
      return run;
    },
    terminal(id) {
      const terminal = circuit.terminals.get(id);
      if (!terminal) throw new Error(`no terminal ${id}; there is ${[...circuit.terminals.keys()].join(" ")}`);
      return terminal;
    },
  };
}

export const ids = (items: Iterable<{ readonly id: string }>): string[] => [...items].map(({ id }) => id);
