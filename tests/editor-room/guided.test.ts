import { describe, expect, test } from "vitest";
import { declarationProblems } from "../../language-server/src/design/check.js";
import { partRow } from "../../language-server/src/design/schema/index.js";
import { answerProblem, nameProblem } from "../../language-server/src/editor/guided/answer.js";
import { knownParts } from "../../language-server/src/editor/guided/known-parts.js";
import { type PartPlan, partText } from "../../language-server/src/editor/guided/part-text.js";
import { readTextWith } from "../../language-server/src/editor/guided/read-text.js";
import { sheetKinds, sheetOf } from "../../language-server/src/editor/guided/sheet.js";
import { type SitePlan, siteText } from "../../language-server/src/editor/guided/site-text.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { formatted } from "../format/formatted.js";
import { files } from "./alder-cottage.js";
import { TestWorkspace, uriOf } from "./workspace.js";

const read = readTextWith(createChunkParser());

function problemsIn(text: string): string[] {
  return read(text).flatMap(({ problems, broken, declarations }) => [
    ...(broken ? ["broken"] : []),
    ...problems.map(({ message }) => message),
    ...declarations.flatMap((declaration) => declarationProblems(declaration).map(({ message }) => message)),
  ]);
}

/** Without blanks that set values below each other: that is the formatter's. */
function plainly(text: string): string {
  return text.replace(/: +/g, ": ");
}

describe("a new site", () => {
  const uri = uriOf("rook-end.sun");
  const part = { name: "Hollin430", uri: uriOf("parts/roof.sun") };
  const nothingKnown: SitePlan = { name: "Rook End", supply: {}, strings: [] };
  const muchKnown: SitePlan = {
    name: "Rook End",
    rules: "gb",
    supply: { phases: "1", earthing: "TN-C-S", "service-fuse": "80 A" },
    strings: [{ part, count: "11" }, { part, count: "1" }, {}],
    inverter: { part: { name: "Brook4", uri: uriOf("parts/plant.sun") } },
    battery: {},
  };

  test("says what is known, and names in comments what is not", () => {
    expect(plainly(siteText(muchKnown, uri, read).text)).toMatchInlineSnapshot(`
      "use "parts/roof.sun"
      use "parts/plant.sun"

      site "Rook End" {
          rules: gb
          // still to be written: lowest-temperature, highest-temperature, ground-flash-density
      }

      supply GRID {
          phases: 1
          earthing: TN-C-S
          service-fuse: 80 A
          // still to be written: voltage, external-loop-impedance, prospective-fault-current, grid-route
      }

      string S1 is 11 x Hollin430 {
          // still to be written: tilt, azimuth, mounting
      }

      string S2 is 1 x Hollin430 {
          // still to be written: tilt, azimuth, mounting
      }

      string S3 {
          // no part chosen yet: string S3 is NUMBER x PART
          // still to be written: tilt, azimuth, mounting
      }

      inverter INV is Brook4

      battery BAT {
          // no part chosen yet: battery BAT is PART
      }
      "
    `);
  });

  test.each([
    ["nothing", nothingKnown],
    ["much", muchKnown],
  ])("with %s known: it can be read, is formatted, and the first gap is marked", (_, plan) => {
    const { text, open } = siteText(plan, uri, read);
    expect(problemsIn(text)).toEqual([]);
    expect(formatted(text)).toBe(text);
    expect(text.slice(open.start, open.end)).toMatch(/^\/\/ still to be written: .*lowest-temperature/);
  });

  test("what is not known is not checked, never passed", () => {
    const { text } = siteText(muchKnown, uri, read);
    const workspace = new TestWorkspace({ ...files, "rook-end.sun": text });
    const outcomes = workspace.view.assessment(uri).checks.map(({ outcome }) => outcome.outcome);
    expect(outcomes).toContain("not-checked");
    const temperature = workspace.view
      .assessment(uri)
      .checks.filter(({ rule }) => rule.id === "design-temperature" || rule.id === "earthing-sizes");
    expect(temperature.map(({ outcome }) => outcome.outcome)).toEqual(["not-checked", "not-checked"]);
  });

  test("a name cannot break out of its quotation marks", () => {
    const { text } = siteText({ ...nothingKnown, name: 'The "Old\\ Barn" }' }, uri, read);
    expect(text).toContain(`site "The 'Old Barn' }" {`);
    expect(problemsIn(text)).toEqual([]);
  });

  test("parts to choose from are those of all files, by name", () => {
    const workspace = new TestWorkspace({
      "b.sun": "part Zed is module { power: 1 W }\n/** A first line.\n * A second. */\npart Elm is module\n",
      "a.sun": "part Elm is module\npart Oak is inverter\n",
    });
    expect(knownParts(workspace, ["module"])).toEqual([
      { name: "Elm", kind: "module", uri: uriOf("a.sun") },
      { name: "Elm", kind: "module", uri: uriOf("b.sun"), doc: "A first line." },
      { name: "Zed", kind: "module", uri: uriOf("b.sun") },
    ]);
  });
});

describe("a new part", () => {
  test("every kind with a sheet has questions, what most checks need first, none about the place it hangs at", () => {
    const kinds = sheetKinds().map(({ kind }) => kind);
    expect(kinds).toEqual(expect.arrayContaining(["module", "inverter", "battery", "isolator", "cable", "spd"]));
    for (const kind of kinds) {
      const { questions, blocks } = sheetOf(kind)!;
      for (const asked of [questions, ...blocks.map((block) => block.questions)]) {
        const order = asked.map(({ isEssential }) => isEssential);
        expect(order, kind).toEqual([...order].sort((a, b) => Number(b) - Number(a)));
        expect(order[0], kind).toBe(true);
        for (const { help, form } of asked) expect(help && form, kind).toBeTruthy();
        for (const { property } of asked)
          expect(["location", "place", "existing", "labels", "note", "reference"]).not.toContain(property);
      }
    }
    expect(sheetOf("inverter")?.blocks.map(({ kind, isNamed }) => [kind, isNamed])).toEqual([
      ["tracker", true],
      ["ac", false],
      ["backup", false],
      ["battery", false],
    ]);
    expect(sheetOf("load")).toBeUndefined();
  });

  test("a question says what is meant, in which unit, and where a sheet has it", () => {
    expect(sheetOf("module")?.questions[1]).toEqual({
      property: "open-circuit-voltage",
      symbol: "Uoc",
      help: "Open-circuit voltage at STC.",
      sheet: "Voc, open-circuit voltage",
      typical: "38.9 V",
      form: "a number with its unit: V, kV, mV",
      isEssential: true,
    });
    expect(sheetOf("isolator")?.questions.find(({ property }) => property === "lockable")?.choices).toEqual([
      "yes",
      "no",
    ]);
  });

  test("what a sheet gives as typical is an answer to every question", () => {
    for (const { kind } of sheetKinds()) {
      const { questions, blocks } = sheetOf(kind)!;
      for (const { property, typical } of questions)
        if (typical) expect(answerProblem({ kind, property }, typical, read), `${kind} ${property}`).toBeUndefined();
      for (const block of blocks)
        for (const { property, typical } of block.questions)
          if (typical)
            expect(
              answerProblem({ kind, block: block.kind, property }, typical, read),
              `${block.kind} ${property}`,
            ).toBeUndefined();
    }
  });

  test.each([
    ["430", "power is a power and needs its unit, for example 430 W. Perhaps 430 W or 430 kW or 430 MW?"],
    ["430,5 W", /comma.* Perhaps 430\.5 W\?$/],
    ["430 V", "power is a power, for example 430 W; 430 V is a voltage."],
    ["430 w", /Did you mean W\? Perhaps 430 W\?$/],
    ["-430 W", /cannot be less than nothing.* Perhaps 430 W\?$/],
    ["much", "power is a power, for example 430 W; this is the word much."],
    ["1 W }", "This is no value. power is written as 430 W."],
    ["1 W /*", /never closed|This is no value/],
    ["1 W cells-in-series: 54", "This is no value. power is written as 430 W."],
    ["1 W } part Q is module { power: 3 W", "This is no value. power is written as 430 W."],
  ])("%j is refused in words", (answer, message) => {
    expect(answerProblem({ kind: "module", property: "power" }, answer, read)).toEqual(
      typeof message === "string" ? message : expect.stringMatching(message),
    );
  });

  test("ranges, lists, texts and items are asked in the same way", () => {
    const range = { kind: "inverter", block: "tracker", property: "voltage-range" };
    expect(answerProblem(range, "80..550 V", read)).toBeUndefined();
    expect(answerProblem(range, "80-550 V", read)).toBe("This is no value. voltage-range is written as 80..550 V.");
    expect(answerProblem({ kind: "inverter", property: "shutdown-order" }, "ac, dc", read)).toBeUndefined();
    expect(answerProblem({ kind: "module", property: "connector" }, 'Bayonet "P4"', read)).toBeUndefined();
    expect(answerProblem({ kind: "supply", property: "service-fuse" }, "80", read)).toMatch(/needs its unit/);
    expect(answerProblem({ kind: "supply", property: "service-fuse" }, "80 A", read)).toBeUndefined();
    expect(answerProblem({ kind: "module", property: "colour" }, "blue", read)).toBe(
      "There is no property colour here.",
    );
  });

  test("names are names", () => {
    expect(nameProblem("Hollin430")).toBeUndefined();
    expect(nameProblem("")).toMatch(/needs a name/);
    expect(nameProblem("430 Hollin")).toMatch(/^430 Hollin is no name/);
  });

  test("is written as its sheet was read out: what is not stated is not in it", () => {
    const plan: PartPlan = {
      kind: "inverter",
      name: "Brook5",
      answers: {
        "max-dc-voltage": "600 V",
        "max-dc-power": " ",
        connector: 'Bayonet "P4"',
        "shutdown-order": "ac, dc",
      },
      blocks: [
        { kind: "tracker", name: "pv1", answers: { "max-current": "16 A", "voltage-range": "80..550 V" } },
        { kind: "ac", answers: { "rated-power": "5 kW" } },
      ],
      sheet: "sheet 3, revision B",
    };
    const text = partText(plan, read);
    expect(plainly(text)).toMatchInlineSnapshot(`
      "part Brook5 is inverter {
          max-dc-voltage: 600 V
          connector: "Bayonet 'P4'"
          shutdown-order: [ac, dc]
          reference: "sheet 3, revision B"
          tracker pv1 {
              voltage-range: 80..550 V
              max-current: 16 A
          }
          ac {
              rated-power: 5 kW
          }
      }
      "
    `);
    expect(problemsIn(text)).toEqual([]);
    expect(formatted(text)).toBe(text);
  });

  test("an empty sheet is a part all the same", () => {
    for (const { kind } of sheetKinds()) {
      const text = partText({ kind, name: "A", answers: {}, blocks: [], sheet: "" }, read);
      expect(problemsIn(text), kind).toEqual([]);
      expect(partRow(kind)).toBeDefined();
    }
  });
});
