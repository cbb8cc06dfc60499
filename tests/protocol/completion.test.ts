import { afterEach, expect, test } from "vitest";
import type { CompletionList, SignatureHelp } from "vscode-languageserver/node";
import { cottage, files } from "../editor-room/alder-cottage.js";
import { Client } from "./client.js";

let client: Client | undefined;
afterEach(() => {
  expect(client?.errors).toEqual([]);
  client?.dispose();
  client = undefined;
});

async function open(text: string, snippets: boolean): Promise<Client> {
  client = await Client.start({ files, snippets });
  await client.open("cottage.sun", text);
  await client.looked("cottage.sun");
  return client;
}

test("a whole declaration is offered with places to fill in, to an editor that knows of such", async () => {
  const editor = await open(`${cottage}ru\n`, true);
  const list = await editor.at<CompletionList>("textDocument/completion", "cottage.sun", "\nru|");
  const whole = list.items.find(({ kind, filterText }) => kind === 15 && filterText === "run");
  expect(whole).toMatchObject({
    insertTextFormat: 2,
    textEdit: { newText: expect.stringMatching(/^run W7 from \$\{1:FROM\}/) },
  });
});

test("an editor that does not is offered none", async () => {
  const editor = await open(`${cottage}ru\n`, false);
  const list = await editor.at<CompletionList>("textDocument/completion", "cottage.sun", "\nru|");
  expect(list.items.map(({ label }) => label)).toContain("run");
  expect(list.items.filter(({ kind }) => kind === 15)).toEqual([]);
});

test("a run says what comes next while it is written", async () => {
  const editor = await open(`${cottage}run W7 from S1 to \n`, false);
  const help = await editor.at<SignatureHelp>("textDocument/signatureHelp", "cottage.sun", "run W7 from S1 to |");
  expect(help).toMatchObject({
    activeParameter: 2,
    signatures: [{ label: "run NAME from TERMINAL to TERMINAL: LENGTH of CABLE" }],
  });
});
