import { describe, expect, test } from "vitest";
import { actionsAt } from "../../language-server/src/editor/actions.js";
import { marksOf } from "../../language-server/src/editor/diagnostics.js";
import { applied } from "../../language-server/src/editor/edits/change.js";
import { insertProperty } from "../../language-server/src/editor/edits/insert-property.js";
import { placeholder } from "../../language-server/src/editor/edits/placeholder.js";
import { cottage, files, plant, roof } from "./alder-cottage.js";
import { TestWorkspace, uriOf } from "./workspace.js";

/** The actions offered on a marked word, by title, with the texts of the files after each. */
function offered(texts: Record<string, string>, word: string) {
  const name = "cottage.sun";
  const workspace = new TestWorkspace(texts);
  const uri = uriOf(name);
  const start = texts[name]!.indexOf(word);
  expect(start).toBeGreaterThanOrEqual(0);
  return actionsAt(workspace.view, uri, start, start + word.length).map((action) => ({
    title: action.title,
    preferred: action.preferred,
    answers: action.answers,
    after: Object.fromEntries(
      Object.keys(texts).map((file) => {
        const own = action.changes.filter((change) => change.uri === uriOf(file));
        return [file, applied(texts[file]!, own)];
      }),
    ),
  }));
}
function ids(texts: Record<string, string>, name = "cottage.sun"): string[] {
  const workspace = new TestWorkspace(texts);
  return marksOf(workspace.view, uriOf(name), { notChecked: "off" }).map(({ id }) => id);
}

const tooMany = { ...files, "cottage.sun": cottage.replace("8 x", "15 x") };

describe("fixes of findings", () => {
  test("the largest count that holds, with what it then is in the title", () => {
    const fix = offered(tooMany, "15 x").find(({ after }) => after["cottage.sun"]!.includes("string S1 is 14 x"))!;
    expect(fix.title).toContain("14");
    expect(fix.title).toContain("V");
    expect(ids(fix.after)).not.toContain("string-voltage");
  });

  test("a part in scope that holds", () => {
    const texts = {
      ...tooMany,
      "plant.sun": `${plant}${plant.slice(plant.indexOf("part Brook4")).replace("Brook4", "Brook5").replace("600 V", "800 V")}`,
    };
    const fix = offered(texts, "15 x").find(({ title }) => title.includes("Brook5"))!;
    expect(fix.after["cottage.sun"]).toContain("inverter INV is Brook5\n");
    expect(fix.after["plant.sun"]).toBe(texts["plant.sun"]);
    expect(ids(fix.after)).not.toContain("string-voltage");
  });

  test("no fix touches a sheet", () => {
    for (const word of ["15 x", "INV is"])
      for (const { title, after } of offered(tooMany, word)) {
        if (title.startsWith("Insert ")) continue;
        expect(after["plant.sun"]).toBe(plant);
        expect(after["roof.sun"]).toBe(roof);
      }
  });

  test("nothing is offered on a line that cannot be read", () => {
    const texts = { ...files, "cottage.sun": tooMany["cottage.sun"].replace("15 x Hollin430 {", "15 x {") };
    expect(offered(texts, "15 x")).toEqual([]);
  });
});

describe("a departure", () => {
  test("goes behind the item, its reason open, and the open reason is an error", () => {
    const record = offered(tooMany, "15 x").find(({ title }) => title.startsWith("Record"))!;
    expect(record.title).toBe("Record a departure from string-voltage on S1");
    expect(record.after["cottage.sun"]).toContain(
      '    mounting: on-roof\n}\ndeparture string-voltage on S1 because ""\nstring S2',
    );
    expect(ids(record.after)).toContain("empty-reason");
  });

  test("goes behind the comment at the end of the item's line", () => {
    const text = tooMany["cottage.sun"].replace(/string S1 is[^}]*}/, "string S1 is 15 x Hollin430 // rear");
    const record = offered({ ...tooMany, "cottage.sun": text }, "15 x").find(({ title }) =>
      title.startsWith("Record"),
    )!;
    expect(record.after["cottage.sun"]).toContain('430 // rear\ndeparture string-voltage on S1 because ""\nstring S2');
  });

  test("uses the line ending of the file", () => {
    const text = tooMany["cottage.sun"].replaceAll("\n", "\r\n");
    const record = offered({ ...tooMany, "cottage.sun": text }, "15 x").find(({ title }) =>
      title.startsWith("Record"),
    )!;
    expect(record.after["cottage.sun"]).toContain('}\r\ndeparture string-voltage on S1 because ""\r\nstring S2');
  });
});

describe("problems of the text", () => {
  test("did you mean, preferred where there is one meaning", () => {
    const texts = { ...files, "cottage.sun": cottage.replace("9 m of Solar4", "9 m of Solr4") };
    expect(offered(texts, "Solr4")).toMatchObject([
      {
        title: "Change to Solar4",
        preferred: true,
        answers: { id: "unknown-name" },
        after: { "cottage.sun": cottage },
      },
    ]);
  });
  test("several meanings are for the writer to choose from", () => {
    const texts = { ...files, "cottage.sun": cottage.replace("tilt: 35 deg", "tilt: 1,200 deg") };
    const actions = offered(texts, "1,200");
    expect(actions.length).toBeGreaterThan(1);
    expect(actions.every(({ preferred }) => !preferred)).toBe(true);
  });
});

describe("what could not be checked", () => {
  test("the missing property is inserted on the sheet, to be filled in, and stays an error until it is", () => {
    const texts = { ...files, "roof.sun": roof.replace("    max-system-voltage: 1500 V\n", "") };
    const insert = offered(texts, "S1").find(({ title }) => title.includes("max-system-voltage"))!;
    expect(insert.title).toBe("Insert max-system-voltage of Hollin430 in roof.sun, to be filled in");
    expect(insert.after["roof.sun"]).toContain(`    max-series-fuse: 25 A\n    max-system-voltage: ${placeholder}\n}`);
    expect(ids(insert.after, "roof.sun")).toEqual(["wrong-value"]);
    expect(offered(insert.after, "S1").filter(({ title }) => title.includes("max-system-voltage"))).toEqual([]);
  });

  test("on the item, where the item has the property", () => {
    const titles = offered(files, "W2").map(({ title }) => title);
    expect(titles).toEqual(
      expect.arrayContaining(["Insert method of W2, to be filled in", "Insert ambient of W2, to be filled in"]),
    );
    const insert = offered(files, "W2").find(({ title }) => title.startsWith("Insert method"))!;
    expect(insert.after["cottage.sun"]).toContain(`INV.pv1: 1.2 m of Solar4 { method: ${placeholder} }\n`);
  });
});

describe("inserting a property", () => {
  function inserted(text: string): string {
    const workspace = new TestWorkspace({ "a.sun": text });
    const declaration = workspace
      .fragments(uriOf("a.sun"))
      .flatMap(({ declarations }) => declarations)
      .find((one) => one.declares === "item")!;
    if (declaration.declares !== "item") throw new Error("no item");
    const change = insertProperty(text, declaration, "note", '"n"');
    return change ? applied(text, [change]) : "nothing";
  }

  test.each([
    ["spd F1", 'spd F1 { note: "n" }'],
    ["spd F1 // tee\n", 'spd F1 { note: "n" } // tee\n'],
    ["spd F1 {}", 'spd F1 { note: "n" }'],
    ["spd F1 { }", 'spd F1 { note: "n" }'],
    ["spd F1 { supply: dc }", 'spd F1 { supply: dc  note: "n" }'],
    ["spd F1 { supply: dc type: type-2 }", 'spd F1 { supply: dc type: type-2 note: "n" }'],
    ["spd F1 { supply: dc /* d.c. */ }", 'spd F1 { supply: dc  note: "n" /* d.c. */ }'],
    ["spd F1 {\n  supply: dc\n}", 'spd F1 {\n  supply: dc\n  note: "n"\n}'],
    ["spd F1 {\n\tsupply: dc // side\n}\n", 'spd F1 {\n\tsupply: dc // side\n\tnote: "n"\n}\n'],
    ["spd F1 {\r\n    supply: dc\r\n}", 'spd F1 {\r\n    supply: dc\r\n    note: "n"\r\n}'],
    ["spd F1 {\n}", 'spd F1 {\n    note: "n"\n}'],
    ["spd F1 { // none yet\n}", 'spd F1 { // none yet\n    note: "n"\n}'],
    ["spd F1 {\n  supply: dc }", 'spd F1 {\n  supply: dc\n  note: "n"\n}'],
    ["spd F1 {\n  supply: dc /* a\n  b */\n}", 'spd F1 {\n  supply: dc\n  note: "n" /* a\n  b */\n}'],
    ["combiner C {\n  fuse A is P\n}", 'combiner C {\n  fuse A is P\n  note: "n"\n}'],
    ["combiner C {\n  inputs: 2\n  fuse A is P\n}", 'combiner C {\n  inputs: 2\n  note: "n"\n  fuse A is P\n}'],
    ['spd F1 { location: "a } b" }', 'spd F1 { location: "a } b"  note: "n" }'],
  ])("%j", (before, after) => {
    expect(inserted(before)).toBe(after);
  });
});
