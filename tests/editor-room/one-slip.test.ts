import { describe, expect, test } from "vitest";
import { goodDesigns } from "../examples/examples.js";
import { filesOf, seenIn } from "./example-files.js";
import { TestWorkspace } from "./workspace.js";

/** One slip in one place of one file of an example. */
interface Slip {
  readonly file: string;
  readonly what: string;
  readonly text: string;
}

function replaced(text: string, { 0: found, index = 0 }: RegExpMatchArray, by: string): string {
  return text.slice(0, index) + by + text.slice(index + found.length);
}

/** A part that is renamed or deleted, an item that is renamed, a unit that is wrong or left out. */
function* slipsIn(file: string, text: string): Generator<Slip> {
  for (const found of text.matchAll(/^part (\S+) is [\s\S]*?^\}\n/gm)) {
    const [whole, name = ""] = found;
    yield { file, what: `${name} renamed`, text: replaced(text, found, whole.replace(name, `${name}Zz`)) };
    yield { file, what: `${name} deleted`, text: replaced(text, found, "") };
  }
  for (const found of text.matchAll(/^(isolator|spd|inverter|battery|board|meter|supply|string) (\S+) /gm))
    yield { file, what: `${found[2]} renamed`, text: replaced(text, found, `${found[1]} ${found[2]}Zz `) };
  for (const found of text.matchAll(/^( +[\w-]+: +-?[\d.]+(?:\.\.[\d.]+)?) ([a-zA-Z%][\w%/]*)$/gm)) {
    const [whole, value = ""] = found;
    yield { file, what: `${whole.trim()} in kg`, text: replaced(text, found, `${value} kg`) };
    yield { file, what: `${whole.trim()} without its unit`, text: replaced(text, found, value) };
  }
}

/** What is marked as an error in all files of a design, by the line that it stands on. */
function errors(workspace: TestWorkspace, names: readonly string[]): Set<string> {
  const found = new Set<string>();
  for (const name of names) {
    const lines = (workspace.text(`file:///house/${name}`) ?? "").split("\n");
    for (const { id, severity, line } of seenIn(workspace, name))
      if (severity === "error") found.add(`${id} in ${name}: ${lines[line]}`);
  }
  return found;
}

// A slip takes knowledge away: what hangs on it is no more checked. It gives no ground for a finding elsewhere.
describe("one slip is at most one error", () => {
  test.each(goodDesigns)("%s", (design) => {
    const files = filesOf(design);
    const names = Object.keys(files);
    const workspace = new TestWorkspace(files);
    const before = errors(workspace, names);
    const many: string[] = [];
    let slips = 0;
    for (const [name, original] of Object.entries(files)) {
      for (const { file, what, text } of slipsIn(name, original)) {
        slips++;
        workspace.write(file, text);
        const fresh = [...errors(workspace, names)].filter((error) => !before.has(error));
        if (fresh.length > 1) many.push(`${what}: ${fresh.join(" | ")}`);
        workspace.write(file, original);
      }
    }
    expect(slips).toBeGreaterThan(20);
    expect(many).toEqual([]);
  });
});

test("a missing name is marked where it is first said, and the other places are told of with it", () => {
  const files = filesOf("alder-cottage/alder-cottage.sun");
  const plant = "alder-cottage/parts/plant.sun";
  const workspace = new TestWorkspace({
    ...files,
    [plant]: files[plant]!.replace("part RotaryDc32", "part RotaryDc33"),
  });
  const marks = seenIn(workspace, "alder-cottage/alder-cottage.sun").filter(({ severity }) => severity === "error");
  expect(marks.map(({ id, at }) => [id, at])).toEqual([["unknown-name", "RotaryDc32"]]);
});
