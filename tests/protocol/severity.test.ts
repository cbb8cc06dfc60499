import { afterEach, expect, test } from "vitest";
import { cottage, files } from "../editor-room/alder-cottage.js";
import { Client, type ClientOptions } from "./client.js";

let client: Client | undefined;
afterEach(() => {
  expect(client?.errors).toEqual([]);
  client?.dispose();
  client = undefined;
});

const bad = cottage.replace("8 x", "15 x");

async function open(options: ClientOptions): Promise<Client> {
  client = await Client.start(options);
  await client.open("cottage.sun", bad);
  await client.looked("cottage.sun");
  return client;
}

function severity(editor: Client): number | undefined {
  return editor.findings("cottage.sun").find(({ code }) => code === "string-voltage")?.severity;
}

test("the user's settings change what a finding is shown as", async () => {
  const editor = await open({ files });
  await editor.until(() => severity(editor) === 1);
  await editor.configure({ severity: { "string-voltage": "warning" } });
  await editor.until(() => severity(editor) === 2);
  await editor.configure({ severity: { "string-voltage": "off" } });
  await editor.until(() => severity(editor) === undefined);
  await editor.configure({ severity: {} });
  await editor.until(() => severity(editor) === 1);
});

test("a settings file beside the design counts, before the user's own, and follows its changes", async () => {
  const settings = (word: string): string => JSON.stringify({ severity: { "string-voltage": word } });
  const editor = await open({ files: { ...files, "sunwright.json": settings("note") } });
  await editor.until(() => severity(editor) === 3);
  await editor.configure({ severity: { "string-voltage": "error" } });
  await editor.write("sunwright.json", settings("warning"));
  await editor.until(() => severity(editor) === 2);
  await editor.remove("sunwright.json");
  await editor.until(() => severity(editor) === 1);
});

test("what a settings file says wrongly is marked in it", async () => {
  const editor = await open({ files });
  await editor.write("sunwright.json", '{ "severity": { "string-voltag": "off" } }');
  await editor.until(() => editor.all("sunwright.json").length > 0);
  const [fault] = editor.all("sunwright.json");
  expect(fault).toMatchObject({
    severity: 1,
    message: "There is no rule string-voltag. Did you mean string-voltage?",
    range: { start: { line: 0, character: 16 }, end: { line: 0, character: 31 } },
  });
  await editor.write("sunwright.json", "{}");
  await editor.until(() => editor.all("sunwright.json").length === 0);
});
