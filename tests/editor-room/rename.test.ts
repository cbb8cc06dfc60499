import { describe, expect, test } from "vitest";
import { applied } from "../../language-server/src/editor/edits/change.js";
import { definitionAt, highlightsAt, referencesAt } from "../../language-server/src/editor/navigate.js";
import { renameAt, renameableAt } from "../../language-server/src/editor/rename.js";
import { cottage, files, plant, roof } from "./alder-cottage.js";
import { TestWorkspace, textsOf, uriOf, withCursor } from "./workspace.js";

/** A workspace with a cursor in one of its files. */
function open(texts: Record<string, string>) {
  let cursor: { uri: string; offset: number } | undefined;
  const plain = Object.entries(texts).map(([name, marked]) => {
    if (!marked.includes("<|>")) return [name, marked] as const;
    const { text, offset } = withCursor(marked);
    cursor = { uri: uriOf(name), offset };
    return [name, text] as const;
  });
  return { workspace: new TestWorkspace(Object.fromEntries(plain)), ...cursor! };
}

function renamed(texts: Record<string, string>, name: string): Record<string, string> | string {
  const { workspace, uri, offset } = open(texts);
  const result = renameAt(workspace.view, uri, offset, name);
  if ("refused" in result) return result.refused;
  const after: Record<string, string> = {};
  for (const file of Object.keys(texts)) {
    const own = result.edits.filter((span) => span.uri === uriOf(file)).map((span) => ({ ...span, text: name }));
    if (own.length > 0) after[file] = applied(workspace.text(uriOf(file))!, own);
  }
  return after;
}

describe("rename", () => {
  test("an item is renamed in runs, readings and departures, and nowhere else", () => {
    const text = `string S<|>1 is 2 x P { note: "S1" }
string S10 is 2 x P
run W1 from S1 to Q1.out: 3 m of C // S1
measured S1 { irradiance: 3 W/m2 }
departure dc-voltage-drop on S1 because "S1"
expect string-voltage on S1
`;
    expect(renamed({ "a.sun": text }, "East")).toEqual({
      "a.sun": `string East is 2 x P { note: "S1" }
string S10 is 2 x P
run W1 from East to Q1.out: 3 m of C // S1
measured East { irradiance: 3 W/m2 }
departure dc-voltage-drop on East because "S1"
expect string-voltage on East
`,
    });
  });

  test("a name within the value of a property is renamed with what it names, segment by segment", () => {
    const text = `inverter IN<|>V is P { backup { power: 3 kW } }
link N { at: INV.backup  electrode: E1 }
electrode E1 {}
ct CT { around: W12  read-by: INV }
run W12 from INV.backup to E1
departure neutral-earth-link on N because "INV"
`;
    expect(renamed({ "a.sun": text }, "Hybrid")).toEqual({
      "a.sun": `inverter Hybrid is P { backup { power: 3 kW } }
link N { at: Hybrid.backup  electrode: E1 }
electrode E1 {}
ct CT { around: W12  read-by: Hybrid }
run W12 from Hybrid.backup to E1
departure neutral-earth-link on N because "INV"
`,
    });
  });

  test.each([
    ["a run", "run W<|>12 from A to B\nct CT { around: W12 }\n", "run Tails from A to B\nct CT { around: Tails }\n"],
    [
      "from the value itself",
      "run W12 from A to B\nct CT { around: W<|>12 }\n",
      "run Tails from A to B\nct CT { around: Tails }\n",
    ],
  ])("%s is renamed where a property names it", (_, text, wanted) => {
    expect(renamed({ "a.sun": text }, "Tails")).toEqual({ "a.sun": wanted });
  });

  test("a part is renamed in its own file and in every design that uses it", () => {
    const barn = cottage.replace("Alder Cottage", "Ash Barn");
    const after = renamed(
      { ...files, "barn.sun": barn, "roof.sun": roof.replace("Hollin430", "Hollin<|>430") },
      "Hollin440",
    );
    expect(after).toEqual({
      "cottage.sun": cottage.replaceAll("Hollin430", "Hollin440"),
      "barn.sun": barn.replaceAll("Hollin430", "Hollin440"),
      "roof.sun": roof.replaceAll("Hollin430", "Hollin440"),
    });
  });

  test("a tracker of a part is renamed from a run that lands on it", () => {
    const after = renamed({ ...files, "cottage.sun": cottage.replace("INV.pv1", "INV.p<|>v1") }, "south");
    expect(after).toEqual({
      "cottage.sun": cottage.replaceAll("INV.pv1", "INV.south"),
      "plant.sun": plant.replace("tracker pv1", "tracker south"),
    });
  });

  test("an item's block that lies over its part's keeps the same name as it", () => {
    const text = `part I is inverter { tracker pv1 { inputs: 1 } }
inverter INV is I { tracker pv1 { note: "east" } }
run W1 from S1 to INV.p<|>v1: 3 m of C
`;
    expect(renamed({ "a.sun": text }, "east")).toEqual({ "a.sun": text.replace("<|>", "").replaceAll("pv1", "east") });
  });

  test("names may be words of the language", () => {
    const text = "string S<|>1 is 2 x P\nrun W1 from S1 to Q1: 3 m of C\n";
    expect(renamed({ "a.sun": text }, "on")).toEqual({
      "a.sun": "string on is 2 x P\nrun W1 from on to Q1: 3 m of C\n",
    });
  });

  test.each([
    ["spd F<|>1\nspd F2\n", "F2", "The name F2 is taken by the spd F2. Choose another."],
    ["spd F<|>1\nrun W1 from F1 to F1: 2 m of C\n", "W1", "The name W1 is taken by the run W1. Choose another."],
    ["part P<|> is module\npart Q is fuse\n", "Q", "The name Q is taken by the part Q (fuse). Choose another."],
    [
      "spd F<|>1\n",
      "1F",
      '"1F" is no name: a name is letters, digits, _ and inner hyphens, and begins with a letter or _.',
    ],
    [
      "spd F<|>1\n",
      "F 1",
      '"F 1" is no name: a name is letters, digits, _ and inner hyphens, and begins with a letter or _.',
    ],
    [
      "spd F<|>1\n",
      " ",
      "An empty text is no name: a name is letters, digits, _ and inner hyphens, and begins with a letter or _.",
    ],
    ["sp<|>d F1\n", "F2", "Only the name of an item, a run or a part can be renamed; there is none here."],
    [
      "spd F<|>1\nrun W1 from S1 to F1: 2 m o\n",
      "F2",
      "A line that mentions F1 cannot be read yet, so its name would be left behind. Mend what is marked there first.",
    ],
    [
      "combiner A { fuse F1 is P }\ncombiner B { fuse F2 is P }\nrun W1 from S1 to F<|>1: 2 m of C\n",
      "F2",
      "B.F2 has that name, and a line that only says F2 could then mean either.",
    ],
    ["combiner A { fuse F<|>1 is P  fuse F2 is P }\n", "F2", "The name F2 is taken by the fuse A.F2. Choose another."],
    ["combiner A { fuse F<|>1 is P }\n", "out", "The name out is taken by a terminal of A. Choose another."],
  ])("refused: %s to %s", (text, name, reason) => {
    expect(renamed({ "a.sun": text }, name)).toBe(reason);
  });

  test("the word offered for renaming is one segment", () => {
    const { workspace, uri, offset } = open({ ...files, "cottage.sun": cottage.replace("INV.pv1", "IN<|>V.pv1") });
    const found = renameableAt(workspace.view, uri, offset);
    expect(found).toMatchObject({ name: "INV" });
    if ("span" in found) expect(workspace.text(uri)!.slice(found.span.start, found.span.end)).toBe("INV");
  });
});

describe("where a name leads", () => {
  function goal(marked: string): string | undefined {
    const { workspace, uri, offset } = open({ ...files, "cottage.sun": marked });
    const definition = definitionAt(workspace.view, uri, offset, "file:///docs");
    if (!definition) return undefined;
    return definition.goes === "to-file" ? definition.uri : textsOf(workspace, [definition.to])[0];
  }

  test.each([
    ["S1 to Q1", "S<|>1 to Q1", `cottage.sun:${cottage.indexOf("S1 is")} S1`],
    ["8 x Hollin430", "8 x Hollin<|>430", `roof.sun:${roof.indexOf("Hollin430")} Hollin430`],
    ["9 m of Solar4", "9 m of Sol<|>ar4", `roof.sun:${roof.indexOf("Solar4")} Solar4`],
    ["INV.pv2", "INV.pv<|>2", `plant.sun:${plant.indexOf("pv2")} pv2`],
    ["INV.pv2", "IN<|>V.pv2", `cottage.sun:${cottage.indexOf("INV")} INV`],
    ['use "roof.sun"', 'use "ro<|>of.sun"', "file:///house/roof.sun"],
  ])("%s", (before, after, expected) => {
    expect(goal(cottage.replace(before, after))).toBe(expected);
  });

  test("a rule leads to its page, an unknown one nowhere", () => {
    expect(goal(`${cottage}expect string-vol<|>tage on S1\n`)).toBe("file:///docs/rules/string-voltage.md");
    expect(goal(`${cottage}expect no-such-r<|>ule on S1\n`)).toBeUndefined();
  });

  test("references in all files, highlights in the one", () => {
    const { workspace, uri, offset } = open({
      ...files,
      "cottage.sun": cottage.replace("8 x Hollin430", "8 x Hollin<|>430"),
    });
    const all = referencesAt(workspace.view, uri, offset, true);
    expect(all).toHaveLength(3);
    expect(referencesAt(workspace.view, uri, offset, false)).toHaveLength(2);
    const here = highlightsAt(workspace.view, uri, offset);
    expect(here.map(({ declares }) => declares)).toEqual([false, false]);
    for (const { start, end, uri: file } of all) expect(workspace.text(file)!.slice(start, end)).toBe("Hollin430");
  });
});
