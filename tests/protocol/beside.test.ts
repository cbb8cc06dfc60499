import { afterEach, describe, expect, test } from "vitest";
import type { CodeLens, Hover, InlayHint } from "vscode-languageserver/node";
import { cottage, files } from "../editor-room/alder-cottage.js";
import { Client, type ClientOptions } from "./client.js";

let client: Client | undefined;

async function open(options: ClientOptions = { files }): Promise<Client> {
  client = await Client.start(options);
  await client.open("cottage.sun", cottage);
  await client.looked("cottage.sun");
  return client;
}

afterEach(() => {
  client?.dispose();
  client = undefined;
});

async function hints(editor: Client): Promise<InlayHint[]> {
  return editor.connection.sendRequest<InlayHint[]>("textDocument/inlayHint", {
    textDocument: { uri: editor.uri("cottage.sun") },
    range: { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } },
  });
}

async function lenses(editor: Client): Promise<CodeLens[]> {
  return editor.connection.sendRequest<CodeLens[]>("textDocument/codeLens", {
    textDocument: { uri: editor.uri("cottage.sun") },
  });
}

describe("figures beside the text", () => {
  test("a hint stands behind the string it is about, and follows an edit", async () => {
    const editor = await open();
    const before = await hints(editor);
    const string = before.find(({ label }) => String(label).startsWith("Uoc 338.4 V"));
    expect(string?.position).toEqual(editor.cursor("cottage.sun", "8 x Hollin430|"));
    await editor.replace("cottage.sun", "8 x", "9 x");
    // 9 · 38.9 V · 1.0875 = 380.7 V
    expect((await hints(editor)).map(({ label }) => label)).toContain("Uoc 380.7 V cold, 63.5 % of 600 V");
    expect(editor.errors).toEqual([]);
  });

  test("a kind of hint is switched off by the settings, at the start and later", async () => {
    const editor = await open({ files, settings: { hints: { runs: false } } });
    const labels = async (): Promise<string> => (await hints(editor)).map(({ label }) => label).join("\n");
    // The client hands out the whole section for whatever is asked of it.
    await editor.configure({ hints: { runs: false } });
    await editor.replace("cottage.sun", "8 x", "7 x");
    await expect.poll(labels).not.toContain("−");
    expect(await labels()).toContain("Uoc");
    await editor.configure({ hints: { runs: true, strings: false } });
    await expect.poll(labels).toContain("−");
    expect(await labels()).not.toContain("Uoc");
  });

  test("a hover says what feeds a thing and what it feeds", async () => {
    const editor = await open();
    const hover = await editor.at<Hover>("textDocument/hover", "cottage.sun", "Q|1 is");
    expect(hover.contents).toMatchObject({
      kind: "markdown",
      value: expect.stringContaining("Fed from S1 through W1. Feeds into INV.pv1 through W2."),
    });
  });

  test("the site has its verdict above it", async () => {
    const editor = await open();
    await editor.replace("cottage.sun", "8 x", "15 x");
    const [site] = await lenses(editor);
    expect(site?.range.start.line).toBe(cottage.split("\n").findIndex((line) => line.startsWith("site")));
    expect(site?.command?.title).toMatch(/^1 error, /);
  });
});
