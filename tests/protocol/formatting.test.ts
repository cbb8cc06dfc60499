import { afterEach, expect, test } from "vitest";
import type { TextEdit } from "vscode-languageserver/node";
import { Client } from "./client.js";

let client: Client | undefined;
afterEach(() => {
  client?.dispose();
  client = undefined;
});

const options = { tabSize: 2, insertSpaces: false };

test("a document, a range and what was just typed are formatted", async () => {
  client = await Client.start();
  expect(client.capabilities).toMatchObject({
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: "}", moreTriggerCharacter: ["\n"] },
  });
  const text = "spd   A is P\nstring S1  is P {\n\ttilt:35 deg // why\n\tazimuth:  180 deg\n}\n";
  await client.open("a.sun", text);
  const textDocument = { uri: client.uri("a.sun") };
  const ask = (method: string, more: object): Promise<TextEdit[]> =>
    client!.connection.sendRequest(`textDocument/${method}`, { textDocument, options, ...more });

  const range = { start: { line: 0, character: 3 }, end: { line: 0, character: 12 } };
  await client.applyEdits("a.sun", await ask("rangeFormatting", { range }));
  expect(client.text("a.sun")).toBe(text.replace("spd   A", "spd A"));

  const position = { line: 4, character: 1 };
  expect(await ask("onTypeFormatting", { position, ch: "}" })).not.toEqual([]);

  await client.applyEdits("a.sun", await ask("formatting", {}));
  expect(client.text("a.sun")).toBe(
    "spd A is P\nstring S1 is P {\n    tilt:    35 deg  // why\n    azimuth: 180 deg\n}\n",
  );
  expect(await ask("formatting", {})).toEqual([]);
  expect(client.errors).toEqual([]);
});
