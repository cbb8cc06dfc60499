import { afterEach, describe, expect, test } from "vitest";
import type { CompletionList, Hover, Location, LocationLink, WorkspaceEdit } from "vscode-languageserver/node";
import { cottage, files, plant, roof } from "../editor-room/alder-cottage.js";
import { Client, type ClientOptions } from "./client.js";

let client: Client | undefined;

async function start(options: ClientOptions = { files }): Promise<Client> {
  client = await Client.start(options);
  return client;
}

afterEach(() => {
  client?.dispose();
  client = undefined;
});

describe("diagnostics", () => {
  test("a good design is looked at and has no finding", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await editor.looked("cottage.sun");
    expect(editor.ids("cottage.sun")).toEqual([]);
    expect(editor.errors).toEqual([]);
  });

  test("a module too many brings the finding with id, page and the limit's own line; taking it away, nothing", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await editor.replace("cottage.sun", "8 x", "15 x");
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
    const finding = editor.findings("cottage.sun").find(({ code }) => code === "string-voltage")!;
    expect(finding).toMatchObject({
      severity: 1,
      source: "sunwright",
      codeDescription: { href: "file:///docs/rules/string-voltage.md" },
      range: { start: editor.cursor("cottage.sun", "|15 x"), end: editor.cursor("cottage.sun", "15| x") },
    });
    expect(finding.message).toContain("600 V");
    const limit = finding.relatedInformation?.find(({ location }) => location.uri === editor.uri("plant.sun"));
    const line = plant.split("\n").findIndex((text) => text.includes("max-dc-voltage"));
    expect(limit?.location.range.start.line).toBe(line);

    await editor.replace("cottage.sun", "15 x", "8 x");
    await editor.until(() => editor.ids("cottage.sun").length === 0);
  });

  test("an edit of a parts file is judged in the design that uses it", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await editor.open("plant.sun", plant);
    await editor.looked("cottage.sun");
    await editor.replace("plant.sun", "max-dc-voltage: 600 V", "max-dc-voltage: 300 V");
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
  });

  test("a line half typed costs the results of no other", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage.replace("8 x", "15 x"));
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
    await editor.replace("cottage.sun", "run W6 from Q2 to F2: 0.4 m of Solar4", "run W6 from Q2 to F2: 0.4 m of ");
    await editor.until(() => editor.ids("cottage.sun").includes("syntax"));
    expect(editor.ids("cottage.sun").filter((id) => id !== "array-size")).toEqual(["string-voltage", "syntax"]);
  });

  test("nothing is sent again that is shown already", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage.replace("8 x", "15 x"));
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
    // Behind the last mark a line more moves nothing.
    const before = editor.published.filter(({ uri }) => uri === editor.uri("cottage.sun")).length;
    await editor.replace(
      "cottage.sun",
      "run W6 from Q2 to F2: 0.4 m of Solar4\n",
      "run W6 from Q2 to F2: 0.4 m of Solar4\n// end\n",
    );
    await editor.at("textDocument/hover", "cottage.sun", "string S|1");
    expect(editor.published.filter(({ uri }) => uri === editor.uri("cottage.sun"))).toHaveLength(before);
  });

  test("what could not be checked is a hint that names the property, and can be switched off", async () => {
    const editor = await start({ files, settings: { notChecked: "hint" } });
    await editor.open("cottage.sun", cottage);
    await editor.until(() => editor.all("cottage.sun").some(({ code }) => code === "not-checked"));
    const hints = editor.all("cottage.sun").filter(({ code }) => code === "not-checked");
    expect(new Set(hints.map(({ severity }) => severity))).toEqual(new Set([4]));
    expect(hints.map(({ message }) => message).join("\n")).toContain("start-voltage of INV.pv1 is not stated");
    await editor.configure({ notChecked: "off" });
    await editor.until(() => editor.all("cottage.sun").length === 0);
  });
});

describe("requests", () => {
  test("a hover shows the working, the margin, the source and the other side", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage.replace("8 x", "15 x"));
    const hover = await editor.at<Hover>("textDocument/hover", "cottage.sun", "string S|1");
    const text = (hover.contents as { value: string }).value;
    expect(text).toContain("Finding (error), [string-voltage](file:///docs/rules/string-voltage.md)");
    expect(text).toContain("Uoc,max = n · Uoc · (1 + β · (Tmin − 25 °C)) = 15 · 38.9 V");
    expect(text).toContain(`[Brook4, max-dc-voltage](${editor.uri("plant.sun")}#L`);
    expect(text).toContain("IEC 62548");
  });

  test("completion offers the parts of the right kind after a count", async () => {
    const editor = await start();
    await editor.open("cottage.sun", `${cottage}string S3 is 8 x `);
    const list = await editor.at<CompletionList>("textDocument/completion", "cottage.sun", "8 x |");
    expect(list.items.map(({ label }) => label)).toEqual(["Hollin430"]);
  });

  test("the fix of a finding mends it", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage.replace("8 x", "15 x"));
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
    const finding = editor.findings("cottage.sun").find(({ code }) => code === "string-voltage")!;
    const actions = await editor.actions("cottage.sun", finding);
    const fix = actions.find(({ edit }) => edit?.changes?.[editor.uri("cottage.sun")]?.[0]?.newText === "14");
    expect(fix).toMatchObject({ kind: "quickfix", diagnostics: [{ code: "string-voltage" }] });
    await editor.apply(fix!.edit!);
    await editor.until(() => !editor.ids("cottage.sun").includes("string-voltage"));
    expect(editor.text("cottage.sun")).toContain("string S1 is 14 x Hollin430 {");
  });

  test("a departure takes its reason before it counts", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage.replace("8 x", "15 x"));
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
    const finding = editor.findings("cottage.sun").find(({ code }) => code === "string-voltage")!;
    const record = (await editor.actions("cottage.sun", finding)).find(({ title }) =>
      title.startsWith("Record a departure"),
    );
    await editor.apply(record!.edit!);
    await editor.until(() => editor.ids("cottage.sun").includes("empty-reason"));
    await editor.replace("cottage.sun", 'because ""', 'because "test rig"');
    await editor.until(() => !editor.ids("cottage.sun").includes("empty-reason"));
    const note = editor.findings("cottage.sun").find(({ code }) => code === "string-voltage")!;
    expect(note.severity).toBe(3);
    expect(note.message).toContain("test rig");
  });

  test("a rename goes through every file", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await editor.open("roof.sun", roof);
    await editor.looked("cottage.sun");
    const edit = await editor.at<WorkspaceEdit>("textDocument/rename", "cottage.sun", "8 x Hollin|430", {
      newName: "Hollin440",
    });
    expect(Object.keys(edit.changes!).sort()).toEqual([editor.uri("cottage.sun"), editor.uri("roof.sun")].sort());
    await editor.apply(edit);
    const found = await editor.at<Location[]>("textDocument/references", "cottage.sun", "8 x Hollin|440", {
      context: { includeDeclaration: true },
    });
    expect(found).toHaveLength(3);
    await editor.until(() => editor.ids("cottage.sun").length === 0);
  });

  test("a rename to a taken name is refused in words", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await expect(editor.at("textDocument/rename", "cottage.sun", "string S|1", { newName: "Q1" })).rejects.toThrow(
      "The name Q1 is taken by the isolator Q1. Choose another.",
    );
  });

  test("definition, symbols and folds", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    const [link] = await editor.at<LocationLink[]>("textDocument/definition", "cottage.sun", "to INV.pv|1");
    expect(link?.targetUri).toBe(editor.uri("plant.sun"));
    const document = { textDocument: { uri: editor.uri("cottage.sun") } };
    const symbols = await editor.connection.sendRequest<{ name: string; detail: string }[]>(
      "textDocument/documentSymbol",
      document,
    );
    expect(symbols.find(({ name }) => name === "W1")?.detail).toBe("S1 → Q1, 9 m Solar4");
    const folds = await editor.connection.sendRequest<unknown[]>("textDocument/foldingRange", document);
    expect(folds).toHaveLength(2);
    const named = await editor.connection.sendRequest<{ name: string }[]>("workspace/symbol", { query: "brook" });
    expect(named.map(({ name }) => name)).toEqual(["Brook4"]);
  });
});

describe("the session", () => {
  test("ends with exit code 0 after shutdown", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    expect(await editor.stop()).toBe(0);
  });
});
