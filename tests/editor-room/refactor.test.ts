import { describe, expect, test } from "vitest";
import { cottage, files, roof } from "./alder-cottage.js";
import { changedTexts, refactorings } from "./refactored.js";
import { TestWorkspace, uriOf } from "./workspace.js";

/** The files, by name, after the refactoring whose title begins with some words; the cursor stands at other words. */
function refactored(texts: Record<string, string>, words: string, title: string, name = "cottage.sun") {
  const workspace = new TestWorkspace(texts);
  const found = refactorings(workspace, name, words).find((each) => each.title.startsWith(title));
  if (!found) throw new Error(`nothing begins with "${title}" at "${words}"`);
  const changed = [...changedTexts(workspace, found)];
  return {
    title: found.title,
    naming: found.naming,
    texts: Object.fromEntries(changed.map(([uri, text]) => [uri.slice(uriOf("").length), text])),
  };
}

function titles(texts: Record<string, string>, words: string, name = "cottage.sun"): string[] {
  return refactorings(new TestWorkspace(texts), name, words).map(({ title }) => title);
}

describe("a part out of what an item states", () => {
  test("figures of the sheet go to the part with their comments, the rest stays", () => {
    const text = `/** The main switch. */
isolator Q1 {
    // from the plate
    rated-current: 63 A  // at 40 degC
    poles: 2
    location: "wall"
}
`;
    const { texts, naming } = refactored({ "a.sun": text }, "isolator Q1", "Make a part", "a.sun");
    expect(texts["a.sun"]).toBe(`part Isolator63 is isolator {
    // from the plate
    rated-current: 63 A  // at 40 degC
    poles: 2
}

/** The main switch. */
isolator Q1 is Isolator63 {
    location: "wall"
}
`);
    expect(texts["a.sun"]!.slice(naming!.start, naming!.start + 10)).toBe("Isolator63");
  });

  test.each([
    [
      "in one line",
      'isolator Q1 { supply: ac  location: "x"  rated-current: 63 A }\n',
      'part Isolator63 is isolator {\n    supply: ac\n    rated-current: 63 A\n}\n\nisolator Q1 is Isolator63 { location: "x" }\n',
    ],
    [
      "nothing stays",
      "isolator Q1 { supply: ac  poles: 2 }\n",
      "part Isolator2 is isolator {\n    supply: ac\n    poles: 2\n}\n\nisolator Q1 is Isolator2\n",
    ],
    [
      "ports belong to the sheet",
      'inverter Q1 { max-dc-voltage: 600 V  tracker pv1 { inputs: 1 }  location: "y" }\n',
      'part Inverter600 is inverter {\n    max-dc-voltage: 600 V\n    tracker pv1 { inputs: 1 }\n}\n\ninverter Q1 is Inverter600 { location: "y" }\n',
    ],
    [
      "of something nested",
      "board CU { isolator Q1 { poles: 2 } }\n",
      "part Isolator2 is isolator {\n    poles: 2\n}\n\nboard CU { isolator Q1 is Isolator2 }\n",
    ],
    [
      "the name is free",
      "part Isolator2 is fuse {}\r\nisolator Q1 { poles: 2 }\r\n",
      "part Isolator2 is fuse {}\r\npart Isolator2B is isolator {\r\n    poles: 2\r\n}\r\n\r\nisolator Q1 is Isolator2B\r\n",
    ],
  ])("%s", (_, text, wanted) => {
    expect(refactored({ "a.sun": text }, "Q1", "Make a part", "a.sun").texts["a.sun"]).toBe(wanted);
  });

  test.each([
    ["nothing of the sheet", 'isolator Q1 { location: "x" }\n'],
    ["a part already", "isolator Q1 is P { poles: 2 }\n"],
    ["a kind without sheets", "string Q1 { tilt: 3 deg }\n"],
    ["a line that cannot be read", "isolator Q1 { poles: 2\n"],
  ])("is not offered for %s", (_, text) => {
    expect(titles({ "a.sun": text }, "Q1", "a.sun").filter((title) => title.startsWith("Make a part"))).toEqual([]);
  });
});

describe("a string in two", () => {
  test("halves, each with its run, to where the old one goes", () => {
    const { texts, title } = refactored(files, "string S1", "Split S1");
    expect(title).toBe("Split S1 into 4 and 4 modules: new S3 through new W7 to Q1");
    expect(texts["cottage.sun"]).toContain("string S1 is 4 x Hollin430 {");
    expect(texts["cottage.sun"]).toMatch(/\}\nstring S3 is 4 x Hollin430 \{\n( .*\n)+\}\n/);
    expect(texts["cottage.sun"]).toContain("\n// as long as W1: measure\nrun W7 from S3 to Q1: 9 m of Solar4 {");
  });

  test("of an odd number the old one keeps the larger half, and what was said of it is named", () => {
    const text = `${cottage.replace("8 x", "9 x")}measured S1 { polarity: correct }
departure string-voltage on S1 because "so"
expect string-voltage on S1
`;
    const { title } = refactored({ ...files, "cottage.sun": text }, "string S1", "Split S1");
    expect(title).toBe(
      "Split S1 into 5 and 4 modules: new S3 through new W7 to Q1 (written for 9 modules, look again: 1 reading, 1 departure, 1 expectation)",
    );
  });

  test("to a tracker that is free", () => {
    const text = cottage.replace(/^run .*INV\.pv2.*\n/m, "");
    expect(text).not.toBe(cottage);
    const { texts } = refactored(
      { ...files, "cottage.sun": text },
      "string S1",
      "Split S1 into 4 and 4 modules: new S3 through new W7 to INV",
    );
    expect(texts["cottage.sun"]).toMatch(/run W7 from S3 to INV\.pv2: 9 m of Solar4/);
  });

  test.each([["1 x"], ["0 x"]])("is not offered for %s", (count) => {
    const text = cottage.replace("8 x", count);
    expect(titles({ ...files, "cottage.sun": text }, "string S1").filter((title) => title.startsWith("Split"))).toEqual(
      [],
    );
  });
});

describe("a device in a run", () => {
  const run =
    'run W1 from S1 to Q1: 9 m of Solar4 { method: conduit-in-air  ambient: 45 degC  start-connector: "A"  end-connector: "B"  connector-rated-voltage: 1500 V }';
  const text = cottage.replace(/^run W1 .*$/m, run);

  test("both pieces together are as long as the run was, and what is said of an end stays there", () => {
    const { texts, title } = refactored({ ...files, "cottage.sun": text }, "run W1", "Insert an isolator");
    expect(title).toBe("Insert an isolator, RotaryDc32, into W1");
    expect(texts["cottage.sun"]).toContain(`isolator Q3 is RotaryDc32
// half of the 9 m of W1: measure
run W1 from S1 to Q3: 4.5 m of Solar4 { method: conduit-in-air  ambient: 45 degC  start-connector: "A"  connector-rated-voltage: 1500 V }
// half of the 9 m of W1: measure
run W7 from Q3 to Q1: 4.5 m of Solar4 { method: conduit-in-air  ambient: 45 degC  end-connector: "B"  connector-rated-voltage: 1500 V }
`);
  });

  test("a run that is written from the inverter meets the device at its far side", () => {
    const backwards = text.replace("from S1 to Q1", "from Q1.in to S1");
    const { texts } = refactored({ ...files, "cottage.sun": backwards }, "run W1", "Insert an isolator");
    expect(texts["cottage.sun"]).toContain("run W1 from Q1.in to Q3.out: 4.5 m");
    expect(texts["cottage.sun"]).toContain("run W7 from Q3.in to S1: 4.5 m");
  });

  test("without a part that holds its figures are to be filled in", () => {
    const bare = { "cottage.sun": text.replace(/^isolator Q1 .*$/m, "isolator Q1"), "roof.sun": roof, "plant.sun": "" };
    const { texts, title } = refactored(bare, "run W1", "Insert an isolator");
    expect(title).toBe("Insert an isolator, its figures to be filled in, into W1");
    expect(texts["cottage.sun"]).toMatch(/isolator Q3 \{ rated-voltage: TODO .*supply: dc .*lockable: TODO/);
  });

  test("a surge protective device is tapped off behind the isolator, by a lead of which nothing is known", () => {
    const { texts } = refactored(files, "run W1", "Tap an spd");
    expect(texts["cottage.sun"]).toContain(
      "spd F3 is SurgeDc800\nrun W7 from Q1.out to F3  // tee, in parallel: state its length and cable\n",
    );
  });

  test.each([
    ["a meter in the line of an array", "run W1", "meter"],
    ["anything in the lead of a surge protective device", "run W3", "into"],
    ["a device in a run that leads nowhere", "run W9", "into"],
  ])("not: %s", (_, words, unwanted) => {
    const lost = `${cottage}run W9 from Nothing to Nowhere: 3 m of Solar4\n`;
    const lead = lost.includes("run W3") ? lost : `${lost}run W3 from Q1 to F1: 0.2 m of Solar4\n`;
    expect(titles({ ...files, "cottage.sun": lead }, words).filter((title) => title.includes(unwanted))).toEqual([]);
  });
});

describe("to another file", () => {
  test("a used file takes a declaration with its comments, and gets no second use", () => {
    const { texts } = refactored(files, "string S1", "Move S1 to roof.sun");
    const own = /\/\*\*[^/]*\*\/\nstring S1 [^}]*\}\n/.exec(cottage)![0];
    expect(texts["cottage.sun"]).not.toContain("string S1");
    expect(texts["cottage.sun"]).toContain(cottage.slice(0, cottage.indexOf(own)).trimEnd());
    expect(texts["roof.sun"]).toBe(`${roof}\n${own}`);
  });

  test("a file beside it that holds sheets is used from then on", () => {
    const { texts } = refactored(
      { ...files, "more.sun": "part M is fuse {}\r\n" },
      "isolator Q1",
      "Move Q1 to more.sun",
    );
    expect(texts["more.sun"]).toMatch(/^part M is fuse \{\}\r\n\r\nisolator Q1 is .*\r\n$/);
    expect(texts["cottage.sun"]).toContain('use "plant.sun"\nuse "more.sun"\n');
  });

  test("a new file, where the editor can make one", () => {
    const { texts } = refactored(files, "isolator Q1", "Move Q1 to a new file");
    expect(texts["q1.sun"]).toMatch(/^isolator Q1 is .*\n$/);
    expect(texts["cottage.sun"]).toContain('use "plant.sun"\nuse "q1.sun"\n');
    const offered = refactorings(new TestWorkspace(files), "cottage.sun", "isolator Q1", false);
    expect(offered.filter(({ creates }) => creates)).toEqual([]);
  });

  test("never in a circle, to another design, or to where the name is taken", () => {
    const texts = {
      ...files,
      "above.sun": 'use "cottage.sun"\n',
      "barn.sun": cottage.replace("Alder Cottage", "Ash Barn").replace(/use .*\n/g, ""),
      "taken.sun": "part RotaryDc32 is isolator {}\n",
    };
    const goals = titles(texts, "string S1").filter((title) => title.startsWith("Move"));
    expect(goals).toEqual([
      "Move S1 to roof.sun",
      "Move S1 to plant.sun",
      "Move S1 to taken.sun",
      "Move S1 to a new file s1.sun",
    ]);
    const ofSheet = titles(texts, "part RotaryDc32", "plant.sun").filter((title) => title.startsWith("Move"));
    expect(ofSheet).not.toContain("Move RotaryDc32 to taken.sun");
    expect(ofSheet.some((title) => title.includes("above") || title.includes("barn"))).toBe(false);
  });

  test("a site stays where it is: it says where a design begins", () => {
    expect(titles(files, "site ")).toEqual([]);
  });
});
