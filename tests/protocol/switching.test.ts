import { afterEach, describe, expect, test } from "vitest";
import type { CodeLens, Hover, InlayHint } from "vscode-languageserver/node";
import { referenceHouse } from "../circuit/reference-house.js";
import { cottage, files } from "../editor-room/alder-cottage.js";
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

interface WhatIfResult {
  readonly suppositions: readonly string[];
  readonly refused?: string;
}
function suppose(editor: Client, name: string, text: string, more: object = {}): Promise<WhatIfResult> {
  return editor.connection.sendRequest("sunwright/whatIf", { textDocument: { uri: editor.uri(name) }, text, ...more });
}
function ask<Result>(editor: Client, method: string, name: string, more: object): Promise<Result> {
  return editor.connection.sendRequest(method, { textDocument: { uri: editor.uri(name) }, ...more });
}

describe("what if", () => {
  test("problems, hovers and figures are of what is supposed, say so, and go with it; nothing is written", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await editor.looked("cottage.sun");
    expect(await suppose(editor, "cottage.sun", "S1.count = 15")).toEqual({
      suppositions: ["S1.count = 15 (written: 8)"],
    });
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
    const finding = editor.findings("cottage.sun").find(({ code }) => code === "string-voltage");
    expect(finding?.message).toMatch(/^What if: S1: 15 × Hollin430 reach 634\.6 V/);
    const mark = editor.findings("cottage.sun").find(({ code }) => code === "what-if");
    expect(mark?.range).toEqual({
      start: editor.cursor("cottage.sun", "|8 x"),
      end: editor.cursor("cottage.sun", "8| x"),
    });
    const hover = await editor.at<Hover>("textDocument/hover", "cottage.sun", "string S|1");
    expect(JSON.stringify(hover.contents)).toContain("15 (what if) × Hollin430");
    const whole = { range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } } };
    const hints = await ask<InlayHint[]>(editor, "textDocument/inlayHint", "cottage.sun", whole);
    expect(hints.map(({ label }) => String(label)).filter((label) => label.includes("what if"))).not.toEqual([]);
    const lenses = await ask<CodeLens[]>(editor, "textDocument/codeLens", "cottage.sun", {});
    expect(lenses.map(({ command }) => command?.title).join()).toContain("what if: ");
    expect(editor.text("cottage.sun")).toBe(cottage);

    expect(await suppose(editor, "cottage.sun", "")).toEqual({ suppositions: [] });
    await editor.until(() => editor.ids("cottage.sun").length === 0);
    expect(editor.errors).toEqual([]);
  });

  test("can be tried without being supposed, and is refused in words", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await editor.looked("cottage.sun");
    const tried = await suppose(editor, "cottage.sun", "S1.count = 15", { tryOnly: true });
    expect(tried.suppositions).toHaveLength(1);
    const { refused, suppositions } = await suppose(editor, "cottage.sun", "S3.count = 15");
    expect(suppositions).toEqual([]);
    expect(refused).toContain("There is no item, run or part S3. Did you mean S1?");
    const hover = await editor.at<Hover>("textDocument/hover", "cottage.sun", "string S|1");
    expect(JSON.stringify(hover.contents)).not.toMatch(/what if/i);
  });

  test("holds while the text is typed on", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await suppose(editor, "cottage.sun", "site.lowest-temperature = -60 degC");
    await editor.replace("cottage.sun", "8 x", "13 x");
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
    expect(editor.findings("cottage.sun").find(({ code }) => code === "string-voltage")?.message).toContain("−60 °C");
  });

  test("is told at the mark when its target is gone", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await suppose(editor, "cottage.sun", "S2.tilt = 10 deg");
    await editor.replace("cottage.sun", "string S2 is", "string S8 is");
    await editor.until(() =>
      editor
        .findings("cottage.sun")
        .some(({ message }) => String(message).startsWith("Cannot be supposed any more: S2.tilt")),
    );
  });
});

describe("switching", () => {
  const house = { files: { "house.sun": referenceHouse } };

  test("what may be chosen, with what stands at the cursor", async () => {
    const editor = await start(house);
    await editor.open("house.sun", referenceHouse);
    const position = editor.cursor("house.sun", "isolator Q|1 is");
    const { designs, at } = await ask<{
      designs: { entry: string; title: string; devices: { id: string }[] }[];
      at: string;
    }>(editor, "sunwright/switching", "house.sun", { position });
    expect(at).toBe("Q1");
    expect(designs.map(({ entry, title }) => [entry, title])).toEqual([[editor.uri("house.sun"), "Reference house"]]);
    expect(designs[0]?.devices.map(({ id }) => id)).toContain("OLD.Q6");
  });

  test("pages on what is live and how to isolate, of the text as it is typed", async () => {
    const editor = await start(house);
    await editor.open("house.sun", referenceHouse);
    const live = await ask<{ markdown: string }>(editor, "sunwright/live", "house.sun", {
      open: ["Q2"],
      supply: "grid",
    });
    expect(live.markdown).toContain("# What is live with Q2 open, by day and by night, with the grid");
    await editor.replace("house.sun", "isolator Q4 is AcSwitch", "isolator Q4 is AcSwitch { poles: 1 }");
    const isolate = await ask<{ markdown: string }>(editor, "sunwright/isolate", "house.sun", { thing: "INV" });
    expect(isolate.markdown).toContain("Open Q1, Q2, Q3 and OLD.Q5: INV is dead");
    expect(await ask(editor, "sunwright/isolate", "house.sun", { thing: "INW" })).toEqual({
      refused: "There is no item, run or part INW. Did you mean INV?",
    });
  });

  test("a request that makes no sense fails alone", async () => {
    const editor = await start(house);
    await editor.open("house.sun", referenceHouse);
    await expect(ask(editor, "sunwright/live", "house.sun", {})).rejects.toThrow();
    const live = await ask<{ markdown: string }>(editor, "sunwright/live", "house.sun", { open: [], light: "dusk" });
    expect(live.markdown).toContain("by day and by night");
  });
});
