import { afterEach, expect, test } from "vitest";
import { type CodeAction, ResourceOperationKind, type TextDocumentEdit } from "vscode-languageserver/node";
import { cottage, files, roof } from "../editor-room/alder-cottage.js";
import { formatted } from "../format/formatted.js";
import { Client } from "./client.js";

let client: Client | undefined;
afterEach(() => {
  client?.dispose();
  client = undefined;
});

/** What is offered where some words begin. */
async function offered(words: string, only?: string[]): Promise<CodeAction[]> {
  const position = client!.cursor("cottage.sun", `|${words}`);
  return client!.connection.sendRequest("textDocument/codeAction", {
    textDocument: { uri: client!.uri("cottage.sun") },
    range: { start: position, end: position },
    context: { diagnostics: [], ...(only && { only }) },
  });
}

const resolving = {
  textDocument: { codeAction: { dataSupport: true, resolveSupport: { properties: ["edit"] } } },
  workspace: { workspaceEdit: { documentChanges: true, resourceOperations: [ResourceOperationKind.Create] } },
};

test("kinds are told apart, and an editor that asks for no edits later gets them at once", async () => {
  client = await Client.start({ files });
  await client.open("cottage.sun", cottage);
  await client.looked("cottage.sun");
  const kinds = async (only: string[]): Promise<string[]> => [
    ...new Set((await offered("run W1 from", only)).map(({ kind }) => kind!)),
  ];
  expect(await kinds(["refactor"])).toEqual(["refactor.rewrite", "refactor.move"]);
  expect(await kinds(["refactor.move"])).toEqual(["refactor.move"]);
  expect(await kinds(["quickfix"])).not.toContain("refactor.move");
  const all = await offered("run W1 from", ["refactor"]);
  expect(all.every(({ edit, data }) => edit && !data)).toBe(true);
  expect(all.every(({ edit }) => !edit!.documentChanges)).toBe(true);
  const insert = all.find(({ title }) => title.startsWith("Insert an isolator"))!;
  await client.apply(insert.edit!);
  expect(client.text("cottage.sun")).toContain("run W7 from Q3 to Q1: 4.5 m of Solar4");
  await client.until(() => !client!.ids("cottage.sun").includes("unknown-name"));
  expect(client.errors).toEqual([]);
});

test("the edit comes when the action is chosen; a new file is made before it is filled", async () => {
  client = await Client.start({ files, capabilities: resolving });
  await client.open("cottage.sun", cottage);
  await client.looked("cottage.sun");
  const all = await offered("string S1", ["refactor"]);
  expect(all.every(({ edit, data }) => !edit && data)).toBe(true);
  const move = all.find(({ title }) => title === "Move S1 to a new file s1.sun")!;
  const { edit } = await client.connection.sendRequest<CodeAction>("codeAction/resolve", move);
  const [create, fill, ...others] = edit!.documentChanges!;
  expect(create).toMatchObject({ kind: "create", uri: client.uri("s1.sun"), options: { overwrite: false } });
  expect((fill as TextDocumentEdit).textDocument.uri).toBe(client.uri("s1.sun"));
  expect((fill as TextDocumentEdit).edits).toMatchObject([{ newText: expect.stringContaining("string S1 is 8 x") }]);
  expect(others).toMatchObject([{ textDocument: { uri: client.uri("cottage.sun") } }]);
  expect(client.errors).toEqual([]);
});

test("a fix comes with its edit when it is chosen, laid out as its file is", async () => {
  const sheets = formatted(roof.replace(/^ *max-system-voltage.*\n/m, ""));
  client = await Client.start({ files, capabilities: resolving });
  await client.open("roof.sun", sheets);
  await client.open("cottage.sun", cottage);
  await client.until(() =>
    client!.all("cottage.sun").some(({ message }) => `${message}`.includes("max-system-voltage")),
  );
  const insert = (await offered("S1 is", ["quickfix"])).find(({ title }) => title.includes("max-system-voltage"))!;
  expect(insert.edit).toBeUndefined();
  const { edit } = await client.connection.sendRequest<CodeAction>("codeAction/resolve", insert);
  await client.apply(edit!);
  expect(client.text("roof.sun")).toMatch(/\n {4}max-system-voltage: {2,}TODO\n/);
  expect(formatted(client.text("roof.sun"))).toBe(client.text("roof.sun"));
  expect(client.errors).toEqual([]);
});

test("an action that can no longer be done comes back without an edit", async () => {
  client = await Client.start({ files, capabilities: resolving });
  await client.open("cottage.sun", cottage);
  await client.looked("cottage.sun");
  const split = (await offered("string S1", ["refactor"])).find(({ title }) => title.startsWith("Split S1"))!;
  await client.replace("cottage.sun", "string S1 is 8 x", "string S1 is 1 x");
  const resolved = await client.connection.sendRequest<CodeAction>("codeAction/resolve", split);
  expect(resolved.edit).toBeUndefined();
});

test("a new part waits to be renamed, where the editor has a command for that", async () => {
  const text = cottage.replace(/^isolator Q1 .*$/m, "isolator Q1 { supply: dc  poles: 2 }");
  client = await Client.start({ files, options: { renameCommand: "editor.renameAt" } });
  await client.open("cottage.sun", text);
  await client.looked("cottage.sun");
  const [extract] = await offered("isolator Q1 {", ["refactor.extract"]);
  expect(extract!.command).toMatchObject({ command: "editor.renameAt" });
  await client.apply(extract!.edit!);
  const [uri, position] = extract!.command!.arguments!;
  expect(uri).toBe(client.uri("cottage.sun"));
  expect(client.text("cottage.sun").slice(client.offset("cottage.sun", position)).startsWith("Isolator2 is")).toBe(
    true,
  );
});
