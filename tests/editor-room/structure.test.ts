import { describe, expect, test } from "vitest";
import { linksOf } from "../../language-server/src/editor/links.js";
import { selectionsAt } from "../../language-server/src/editor/selection.js";
import { colouredIn } from "../../language-server/src/editor/structure/coloured.js";
import { fedFrom, feeds, hierarchyAt } from "../../language-server/src/editor/structure/hierarchy.js";
import { acProtection } from "../../language-server/src/rules/ac-protection.js";
import { exampleText } from "../../language-server/src/rules/example-parts.js";
import { cottage, files } from "./alder-cottage.js";
import { TestWorkspace, textsOf, uriOf, withCursor } from "./workspace.js";

describe("selecting outwards", () => {
  function selected(marked: string): string[] {
    const { text, offset } = withCursor(marked);
    const workspace = new TestWorkspace({ "a.sun": text });
    return selectionsAt(workspace.view, uriOf("a.sun"), offset).map(({ start, end }) => text.slice(start, end));
  }

  test("goes from the word over value, property and block to the declaration and the file", () => {
    expect(selected("spd F is P\nstring S1 is P { tilt: 3<|>5 deg  azimuth: 1 deg }\n")).toEqual([
      "35 deg",
      "tilt: 35 deg",
      " tilt: 35 deg  azimuth: 1 deg ",
      "{ tilt: 35 deg  azimuth: 1 deg }",
      "string S1 is P { tilt: 35 deg  azimuth: 1 deg }",
      "spd F is P\nstring S1 is P { tilt: 35 deg  azimuth: 1 deg }\n",
    ]);
  });

  test("takes one segment of a name before the whole of it", () => {
    expect(selected("run W from A to INV.p<|>v1: 3 m of C\n").slice(0, 2)).toEqual(["pv1", "INV.pv1"]);
  });

  test("passes every nested item on the way", () => {
    const found = selected("board CU { rcd R { way 1: breaker K { poles: <|>2 } } }");
    expect(found.filter((text) => /^(way|rcd|board)/.test(text)).map((text) => text.split(" ")[0])).toEqual([
      "way",
      "rcd",
      "board",
    ]);
  });

  test("is the file alone between declarations", () => {
    expect(selected("\n<|>\n")).toEqual(["\n\n"]);
  });
});

test("a used file is linked where it is named, unless there is none", () => {
  const workspace = new TestWorkspace({ ...files, "a.sun": 'use "roof.sun"\nuse "none.sun"\n' });
  const links = linksOf(workspace.view, uriOf("a.sun"));
  expect(links.map(({ to }) => to)).toEqual([uriOf("roof.sun")]);
  expect(
    textsOf(
      workspace,
      links.map(({ span }) => span),
    ),
  ).toEqual(["a.sun:5 roof.sun"]);
});

describe("fed from, and feeds", () => {
  const texts = { ...files, "ac.sun": exampleText(acProtection.examples.holds) };
  const { view } = new TestWorkspace(texts);
  const told = (steps: ReturnType<typeof feeds>): string[] => steps.map(({ to }) => `${to.id}: ${to.detail}`);

  test("an entry is what stands at the cursor; for a run both its ends", () => {
    const at = (word: string): string[] =>
      hierarchyAt(view, uriOf("cottage.sun"), cottage.indexOf(word) + 1).map(({ id }) => id);
    expect(at("Q1 is")).toEqual(["Q1"]);
    expect(at("W2 from")).toEqual(["Q1", "INV.pv1"]);
    expect(at("lowest-temperature")).toEqual([]);
  });

  test("on the array side energy goes from the string to the inverter", () => {
    const entry = uriOf("cottage.sun");
    expect(told(fedFrom(view, entry, "Q1"))).toEqual(["S1: PV string, Hollin430 through W1 (energy of S1)"]);
    expect(feeds(view, entry, "Q1").map(({ to }) => to.id)).toEqual(["INV.pv1"]);
    expect(fedFrom(view, entry, "INV").map(({ to }) => to.id)).toEqual(["INV.pv1", "INV.pv2"]);
    expect(fedFrom(view, entry, "S1")).toEqual([]);
  });

  test("a step is written at the run's end, in the file of what feeds", () => {
    const [step] = feeds(view, uriOf("cottage.sun"), "S1");
    const [span] = step!.written;
    expect(cottage.slice(span!.start - 12, span!.end)).toBe("run W1 from S1");
  });

  test("on the a.c. side what lies between supply and inverter is fed by both", () => {
    const entry = uriOf("ac.sun");
    const sources = told(fedFrom(view, entry, "CU.K9"));
    expect(sources.some((text) => text.includes("(energy of GRID)"))).toBe(true);
    expect(sources.find((text) => text.startsWith("INV.ac"))).toMatch(/through W2 \(energy of INV\)$/);
    expect(
      fedFrom(view, entry, "INV.ac")
        .map(({ to }) => to.id)
        .sort(),
    ).toEqual(["CU.K9", "INV"]);
    expect(feeds(view, entry, "GRID").map(({ to }) => to.id)).toEqual(["CU"]);
    expect(fedFrom(view, entry, "GRID").map(({ to }) => to.id)).toEqual(["CU"]);
  });

  test("what nobody wired is fed by nothing", () => {
    const loose = new TestWorkspace({ "a.sun": "isolator Q is P\n" }).view;
    expect(fedFrom(loose, uriOf("a.sun"), "Q")).toEqual([]);
    expect(feeds(loose, uriOf("a.sun"), "Nothing")).toEqual([]);
  });
});

test("words are coloured by what they are for, not by their form", () => {
  const text = `part P is isolator { supply: dc  note: "n" }
isolator on is P { location: "wall" }
run W from on to INV.pv1: 3 m of P
departure dc-isolator on on because "r"
`;
  const workspace = new TestWorkspace({ "a.sun": text });
  const found = workspace.fragments(uriOf("a.sun")).flatMap((fragment) =>
    colouredIn(fragment).map(({ from, to, sort, declares }) => {
      const start = fragment.chunk.start + from;
      return `${text.slice(start, fragment.chunk.start + to)} ${sort}${declares ? " declared" : ""}`;
    }),
  );
  expect(found).toEqual([
    "P class declared",
    "isolator type",
    "supply property",
    "dc enumMember",
    "note property",
    "isolator type",
    "on variable declared",
    "P class",
    "location property",
    "W function declared",
    "on variable",
    "INV variable",
    "pv1 variable",
    "P class",
    "dc-isolator macro",
    "on variable",
  ]);
});
