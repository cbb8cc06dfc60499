import { expect, test } from "vitest";
import { CompletionItemKind, SymbolKind } from "vscode-languageserver";
import { foldsOf } from "../../language-server/src/editor/folding.js";
import { completionKind, symbolKind, thingSorts } from "../../language-server/src/editor/lsp/symbol-kinds.js";
import { type OutlineEntry, outlineOf } from "../../language-server/src/editor/outline.js";
import { symbolsCalled } from "../../language-server/src/editor/workspace-symbols.js";
import { cottage, files } from "./alder-cottage.js";
import { TestWorkspace, uriOf } from "./workspace.js";

function lines(entries: readonly OutlineEntry[], depth = 0): string[] {
  return entries.flatMap(({ name, detail, sort, children }) => [
    `${"  ".repeat(depth)}${name}${detail ? ` (${detail})` : ""} ${sort}`,
    ...lines(children, depth + 1),
  ]);
}

test("the outline reads like a list of what is installed", () => {
  const workspace = new TestWorkspace(files);
  expect(lines(outlineOf(workspace.view, uriOf("cottage.sun")))).toEqual([
    "use roof.sun file",
    "use plant.sun file",
    "Alder Cottage site",
    "S1 (string, 8 × Hollin430) string",
    "S2 (string, 6 × Hollin430) string",
    "Q1 (isolator, RotaryDc32) dc-device",
    "Q2 (isolator, RotaryDc32) dc-device",
    "F1 (spd, SurgeDc800) dc-device",
    "F2 (spd, SurgeDc800) dc-device",
    "INV (inverter, Brook4) source",
    "W1 (S1 → Q1, 9 m Solar4) run",
    "W2 (Q1 → INV.pv1, 1.2 m Solar4) run",
    "W3 (Q1 → F1, 0.4 m Solar4) run",
    "W4 (S2 → Q2, 8 m Solar4) run",
    "W5 (Q2 → INV.pv2, 1.2 m Solar4) run",
    "W6 (Q2 → F2, 0.4 m Solar4) run",
  ]);
  expect(lines(outlineOf(workspace.view, uriOf("plant.sun"))).slice(2)).toEqual([
    "Brook4 (inverter) part",
    "  pv1 (tracker) port",
    "  pv2 (tracker) port",
    "  ac port",
  ]);
});

test("ways of a board, readings and departures", () => {
  const text = `board CU {
  rcd R1 is P { way 1: breaker K1 is B16 serves "garage" }
}
measured S1 on 2026-06-12 { irradiance: 640 W/m2 }
departure dc-voltage-drop on W4 because "agreed"
`;
  const workspace = new TestWorkspace({ "a.sun": text });
  expect(lines(outlineOf(workspace.view, uriOf("a.sun")))).toEqual([
    "CU (board) board",
    "  R1 (rcd, P) ac-device",
    "    way 1: K1 (breaker, B16, serves garage) ac-device",
    "measured S1 (2026-06-12) reading",
    "departure dc-voltage-drop on W4 (agreed) departure",
  ]);
});

test("a device for either side is what it says, or its part in another file; where neither says it, it is just a device", () => {
  const text = `use "plant.sun"
isolator Q1 is RotaryDc32
isolator Q2 { supply: ac }
isolator Q3
breaker K1 { supply: dc }
fuse F1
inverter INV { battery { } }
battery BAT { isolator SW { supply: dc } }
electrode E1
site "A" { limits { dc-ac-ratio: 2 } }
`;
  const workspace = new TestWorkspace({ ...files, "a.sun": text });
  const sorts = lines(outlineOf(workspace.view, uriOf("a.sun"))).map((line) => line.replace(/ \(.*\)/, ""));
  expect(sorts.slice(1)).toEqual([
    "Q1 dc-device",
    "Q2 ac-device",
    "Q3 device",
    "K1 dc-device",
    "F1 device",
    "INV source",
    "  battery port",
    "BAT source",
    "  SW dc-device",
    "E1 earthing",
    "A site",
    "  limits block",
  ]);
});

test("no two sorts of thing share a picture, and what is offered has the one of the outline", () => {
  const nameOf = (kinds: object, kind: number) => Object.entries(kinds).find(([, value]) => value === kind)?.[0];
  const names = thingSorts.map((sort) => nameOf(SymbolKind, symbolKind(sort)));
  expect(new Set(names).size).toBe(thingSorts.length);
  expect(thingSorts.map((sort) => nameOf(CompletionItemKind, completionKind(sort)))).toEqual(names);
});

test("half-typed text keeps the rest of the outline", () => {
  const workspace = new TestWorkspace({
    ...files,
    "cottage.sun": cottage.replace("spd F1 is SurgeDc800", "spd F1 is"),
  });
  const names = outlineOf(workspace.view, uriOf("cottage.sun")).map(({ name }) => name);
  expect(names).toEqual(expect.arrayContaining(["Q2", "F2", "W6"]));
});

test("folds are blocks and comments of the text, also around braces in strings", () => {
  const text = '/* a\n b */\nspd F1 {\n  note: "{ /* "\n}\nboard B {\n  rcd R {\n    note: "x"\n  }\n}\n';
  const workspace = new TestWorkspace({ "a.sun": text });
  const folds = foldsOf(workspace.view, uriOf("a.sun")).map(
    ({ span, is }) => `${is} ${text.slice(span.start, span.start + 4)}`,
  );
  expect(folds.sort()).toEqual(["block {\n  ", "block {\n  ", "block {\n   ".slice(0, 10), "comment /* a"].sort());
});

test("symbols of all files by letters in their order", () => {
  const workspace = new TestWorkspace(files);
  const found = symbolsCalled(workspace.view, "hln").map(({ entry, container }) => `${entry.name} in ${container}`);
  expect(found).toEqual(["Hollin430 in roof.sun"]);
  expect(symbolsCalled(workspace.view, "pv1").map(({ container }) => container)).toEqual(["Brook4"]);
});
