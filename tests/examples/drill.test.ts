import { describe, expect, it } from "vitest";
import { noticeOfCheck } from "../../language-server/src/assessment/notices.js";
import { main } from "../../language-server/src/cli/main.js";
import { label } from "../../language-server/src/design/facts.js";
import { rules } from "../../language-server/src/rules/index.js";
import { assessed, designs, goodDesigns, root, textOf, trainingDesigns } from "./examples.js";

/** What `sunwright drill` prints and returns for some files. */
async function drilled(...paths: string[]): Promise<{ readonly said: string; readonly exitCode: number }> {
  let said = "";
  const write = (text: string): void => {
    said += text;
  };
  const around = { folder: root, page: { colors: false, width: Number.POSITIVE_INFINITY }, out: write, err: write };
  const exitCode = await main(["drill", ...paths], around);
  return { said, exitCode };
}

describe("every example is found to be what it says", () => {
  it.each(designs)("%s", async (path) => {
    const { said, exitCode } = await drilled(`examples/${path}`);
    expect(exitCode, said).toBe(0);
  });

  it("all of them together, data sheets included", async () => {
    const { said, exitCode } = await drilled("examples");
    expect(exitCode, said).toBe(0);
    expect(said).toContain(`${designs.length} designs`);
  });
});

describe("what does not hold is shown in the design", () => {
  it.each(trainingDesigns)("%s: never on a sheet that other designs use too", (path) => {
    const { checks, design } = assessed(path);
    const shown = checks.flatMap((check) => noticeOfCheck(check) ?? []);
    expect(shown.map(({ place }) => place.chunk.uri).filter((uri) => uri !== design.entry)).toEqual([]);
  });
});

describe("a good design", () => {
  it.each(goodDesigns)("%s has no finding beyond a note", (path) => {
    const { checks, problems } = assessed(path);
    const found = checks.map(noticeOfCheck).filter((notice) => notice !== undefined && notice.severity !== "note");
    expect(found.map((notice) => notice?.message)).toEqual([]);
    expect(problems.map(({ message }) => message)).toEqual([]);
  });

  it.each(goodDesigns)("%s leaves nothing unchecked", (path) => {
    const unchecked = assessed(path).checks.flatMap(({ rule, thing, outcome }) =>
      outcome.outcome === "not-checked"
        ? [
            `${rule.id} on ${label(thing)}: ${outcome.missing.map((each) => `${label(each.thing)}.${each.property}`).join(", ")} ${outcome.reason ?? ""}`,
          ]
        : [],
    );
    expect(unchecked).toEqual([]);
  });

  it.each(goodDesigns)("%s is checked in earnest: every kind of rule has something to say", (path) => {
    const { checks, design } = assessed(path);
    const passed = new Set(checks.filter(({ outcome }) => outcome.outcome === "pass").map(({ rule }) => rule.section));
    const has = (kind: string) => design.items.some((item) => item.kind === kind);
    expect(passed).toContain("A.c. side and the existing board");
    expect(passed).toContain("Earthing, grid, papers");
    if (has("string")) expect(passed).toContain("Strings and trackers");
    if (has("string")) expect(passed).toContain("D.c. cables, connectors, isolation");
    if (has("string")) expect(passed).toContain("Surge");
    if (has("battery")) expect(passed).toContain("Battery and backup");
  });
});

describe("a training design", () => {
  it("is one of at least twelve", () => {
    expect(trainingDesigns.length).toBeGreaterThanOrEqual(12);
  });

  it.each(rules.map(({ id }) => id))("teaches %s", (id) => {
    const taught = trainingDesigns.filter((path) => new RegExp(`^expect ${id} on `, "m").test(textOf(path)));
    expect(taught).not.toEqual([]);
  });

  it.each(trainingDesigns)("%s says what went wrong, why it matters and what to do", (path) => {
    const { design, expected, problems } = assessed(path);
    const story = design.site?.declaration.doc ?? "";
    expect(story).toMatch(/What went wrong: .*Why it matters: .*What to do: /s);
    expect(expected.length).toBeGreaterThan(0);
    expect(problems.map(({ message }) => message)).toEqual([]);
  });

  it.each(trainingDesigns)("%s is listed with what must be found", (path) => {
    const file = path.replace("training/", "");
    const row = textOf("training/README.md")
      .split("\n")
      .find((line) => line.includes(`](${file})`));
    const expectations = [...textOf(path).matchAll(/^expect (\S+) on (\S+)$/gm)];
    expect(row).toBeDefined();
    expect(expectations.map(([, rule, item]) => `\`${rule}\` on \`${item}\``).join(", ")).toBe(
      row?.split("|")[2]?.trim(),
    );
  });
});
