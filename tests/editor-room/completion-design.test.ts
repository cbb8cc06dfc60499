import { describe, expect, test } from "vitest";
import { completeAt } from "../../language-server/src/editor/completion/completion.js";
import { signatureAt } from "../../language-server/src/editor/completion/signature.js";
import { cottage, files } from "./alder-cottage.js";
import { TestWorkspace, uriOf, withCursor } from "./workspace.js";

function open(marked: string) {
  const { text, offset } = withCursor(marked);
  return { view: new TestWorkspace({ ...files, "cottage.sun": text }).view, offset };
}

function offers(marked: string) {
  const { view, offset } = open(marked);
  return completeAt(view, uriOf("cottage.sun"), offset, {})?.offers ?? [];
}

function labels(marked: string): string[] {
  return offers(marked).map(({ label }) => label);
}

const board = `board CU {
    ways: 6
    way 1: breaker K1 is P
    rcd R1 is P {
        way 3: breaker K3 is P
    }
    `;

describe("what this design has free", () => {
  test("ways of the board, those behind an RCD counted too", () => {
    expect(labels(`${cottage}${board}way <|>\n}\n`)).toEqual(["2", "4", "5", "6"]);
    expect(offers(`${cottage}${board}way <|>\n}\n`)[0]).toMatchObject({ insert: "2: ", detail: "free way of CU" });
    expect(labels(`${cottage}${board}rcd R2 is P {\n way <|>\n}\n}\n`)).toEqual(["2", "4", "5", "6"]);
  });

  test("those that are written behind the cursor counted too, although a half-typed way hides them", () => {
    const before = `${cottage}${board.replace("    way 1", "    way <|>\n    isolator MS is P  // way 4 is spare\n    way 1")}}\n`;
    expect(labels(before)).toEqual(["2", "4", "5", "6"]);
  });

  test("no ways where the board does not say how many it has", () => {
    expect(labels(`${cottage}board CU {\n    way <|>\n}\n`)).toEqual([]);
  });

  test("kinds that a way may hold", () => {
    expect(labels(`${cottage}${board}way 2: <|>\n}\n`)).toEqual(expect.arrayContaining(["breaker", "rcbo"]));
  });

  test.each([
    ["isolator", "Q3"],
    ["spd", "F3"],
    ["string", "S3"],
    ["meter", "M1"],
    ["run", "W7"],
  ])("the next name of %s, in the letters that the design uses", (kind, name) => {
    expect(labels(`${cottage}${kind} <|>`)).toEqual([name]);
  });

  test("names of nested things are not given twice", () => {
    expect(labels(`${cottage}${board}}\nbreaker <|>`)).toEqual(["K4"]);
  });

  test("what has no name is offered none", () => {
    expect(labels(`${cottage}earthing <|>`)).toEqual([]);
  });
});

describe("whole declarations", () => {
  const snippets = (marked: string) => offers(marked).filter(({ sort }) => sort === "snippet");

  test("take names, parts and findings of the design, and leave figures open", () => {
    const found = new Map(snippets(`${cottage}<|>`).map(({ label, snippet }) => [label, snippet]));
    expect(found.get("run W7 from … to …")).toBe(`run W7 from \${1:FROM} to \${2:TO}: \${3:LENGTH} m of \${4:Solar4}`);
    expect(found.get("isolator Q3 is …")).toBe(`isolator Q3 is \${1:RotaryDc32}`);
    expect(found.get("string S3 is …")).toContain(`string S3 is \${1:COUNT} x \${2:Hollin430} {`);
    expect(found.get("measured S1 on …")).toContain(`open-circuit-voltage: \${2:READ} V`);
    expect([...found.keys()].some((label) => label.startsWith("battery"))).toBe(false);
    for (const snippet of found.values()) expect(snippet).not.toMatch(/\$\{\d+:-?\d/);
  });

  test("what needs no sheet, and an empty sheet of each kind, with what is usually stated and its unit", () => {
    const found = new Map(snippets("<|>").map(({ label, snippet }) => [label, snippet]));
    expect(found.get("site { … }")).toContain(
      `site "\${1:NAME}" {\n    rules: \${2|gb,iec|}\n    lowest-temperature: \${3:LOWEST-TEMPERATURE} degC\n`,
    );
    expect(found.get("supply { … }")).toContain(`    voltage: \${2:VOLTAGE} V\n    phases: \${3:PHASES}\n`);
    expect(found.get("part … is module")).toContain(`part \${1:NAME} is module {\n    power: \${2:POWER} W\n`);
    expect(found.get("part … is module")).toContain(
      `open-circuit-voltage-coefficient: \${7:OPEN-CIRCUIT-VOLTAGE-COEFFICIENT} %/K\n`,
    );
    expect(found.get("part … is breaker")).toContain(`curve: \${3|B,C,D|}`);
    expect(found.get("part … is ct")).not.toContain("around");
    expect(snippets(`${cottage}<|>`).map(({ label }) => label)).not.toContain("site { … }");
  });

  test("are an error, as they stand, wherever a figure or a name is left open", () => {
    for (const { snippet = "", label } of snippets("<|>")) {
      const asTyped = snippet.replace(/\$\{\d+[:|]([^}|,]*)[^}]*\}/g, "$1");
      const { view } = new TestWorkspace({ "a.sun": `${asTyped}\n` });
      if (/: [A-Z-]+/.test(asTyped)) expect(view.notices(uriOf("a.sun")).length, label).toBeGreaterThan(0);
    }
  });

  test("an open finding can be departed from; one that is answered is not offered", () => {
    const bad = cottage.replace("8 x", "15 x");
    const wanted = "departure string-voltage on S1 because …";
    expect(snippets(`${bad}<|>`).map(({ label }) => label)).toContain(wanted);
    expect(snippets(`${bad}<|>`).find(({ label }) => label === wanted)?.documentation).toContain("600 V");
    const answered = `${bad}departure string-voltage on S1 because "x"\n<|>`;
    expect(snippets(answered).map(({ label }) => label)).not.toContain(wanted);
  });

  test("are compared by the word that they begin with", () => {
    expect(snippets(`${cottage}ru<|>`).find(({ filter }) => filter === "run")).toBeDefined();
  });

  test("none are offered within a block", () => {
    expect(snippets(cottage.replace("    azimuth: 180 deg", "    <|>"))).toEqual([]);
  });
});

test("a property is offered with what is typical of it", () => {
  const found = offers("part P is module { <|> }\n");
  expect(found.find(({ label }) => label === "open-circuit-voltage")?.detail).toMatch(/^Uoc, typical .* V$/);
});

describe("the sentence as it is written", () => {
  function active(marked: string, asked = false): string | undefined {
    const { view, offset } = open(marked);
    const found = signatureAt(view, uriOf("cottage.sun"), offset, asked);
    if (!found) return undefined;
    const place = found.places[found.active]!;
    expect(found.label).toContain(place.label);
    return place.label;
  }

  test.each([
    ["run <|>", "NAME"],
    ["run W<|>", "NAME"],
    ["run W9 <|>", "from TERMINAL"],
    ["run W9 from IN<|>", "from TERMINAL"],
    ["run W9 from INV.<|>", "from TERMINAL"],
    ["run W9 from S1 to <|>", "to TERMINAL"],
    ["run W9 from S1 to Q1: <|>", "LENGTH"],
    ["run W9 from S1 to Q1: 18<|>", "LENGTH"],
    ["run W9 from S1 to Q1: 18 m <|>", "CABLE"],
    ["run W9 from S1 to Q1: 18 m of So<|>", "CABLE"],
    ["departure <|>", "RULE"],
    ["departure string-voltage on S1 because <|>", '"REASON"'],
    ["measured S1 on <|>", "DAY"],
  ])("%s", (typed, place) => {
    expect(active(cottage + typed)).toBe(place);
  });

  test.each(["run W9 from S1 to Q1: 3 m of Solar4 <|>", "string S3 <|>", "// run <|>", "<|>"])(
    "nothing at %s",
    (typed) => {
      expect(active(cottage + typed)).toBeUndefined();
    },
  );

  test("a value is explained to whoever asks, and not while it is typed", () => {
    const typed = `${cottage}string S3 is 8 x Hollin430 { tilt: <|>`;
    expect(active(typed)).toBeUndefined();
    expect(active(typed, true)).toMatch(/deg$/);
  });

  test("the places say what is free and what there is", () => {
    const { view, offset } = open(`${cottage}run <|>`);
    const found = signatureAt(view, uriOf("cottage.sun"), offset, false);
    expect(found?.places[0]?.documentation).toBe("Next free: W7");
    expect(found?.places[4]?.documentation).toContain("Solar4");
  });
});
