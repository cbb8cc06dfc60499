import { read, write } from "./designs";

/** A small design with one fault: a string of one module too many, which breaks `string-voltage` on S1. */
const faulty = "examples/training/one-module-too-many.sun";

let count = 0;

/** Writes a design of its own for a test beside the sheets it uses, changed as wished; gives its path. */
export async function layHouse(mend: (text: string) => string = (text) => text, name?: string): Promise<string> {
  const text = (await read(faulty)).replace(/^expect .*\n?/m, "");
  const path = `examples/training/trial-${name ?? `${++count}.sun`}`;
  await write(path, mend(text));
  return path;
}

const cottage = "examples/alder-cottage/alder-cottage.sun";

/** Writes a copy of the whole example house for a test beside the sheets it uses, changed as wished; gives its path. */
export async function layCottage(mend: (text: string) => string = (text) => text): Promise<string> {
  const path = `examples/alder-cottage/trial-${++count}.sun`;
  await write(path, mend(await read(cottage)));
  return path;
}
