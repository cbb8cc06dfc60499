import { afterEach, expect, test } from "vitest";
import type {
  CallHierarchyIncomingCall,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
  DocumentLink,
  SelectionRange,
  SemanticTokens,
} from "vscode-languageserver/node";
import { cottage, files } from "../editor-room/alder-cottage.js";
import { Client } from "./client.js";

let client: Client | undefined;

async function open(): Promise<Client> {
  client = await Client.start({ files });
  await client.open("cottage.sun", cottage);
  await client.looked("cottage.sun");
  return client;
}

afterEach(() => {
  expect(client?.errors).toEqual([]);
  client?.dispose();
  client = undefined;
});

test("a used file is a link", async () => {
  const editor = await open();
  const textDocument = { uri: editor.uri("cottage.sun") };
  const links = await editor.connection.sendRequest<DocumentLink[]>("textDocument/documentLink", { textDocument });
  expect(links.map(({ target }) => target)).toEqual([editor.uri("roof.sun"), editor.uri("plant.sun")]);
  expect(links[0]?.range).toEqual({
    start: editor.cursor("cottage.sun", 'use "|roof'),
    end: editor.cursor("cottage.sun", 'roof.sun|"'),
  });
});

test("selections go outwards", async () => {
  const editor = await open();
  expect(editor.capabilities.selectionRangeProvider).toBe(true);
  const [inner] = await editor.connection.sendRequest<SelectionRange[]>("textDocument/selectionRange", {
    textDocument: { uri: editor.uri("cottage.sun") },
    positions: [editor.cursor("cottage.sun", "tilt: 3|5 deg")],
  });
  expect(inner?.range.end).toEqual(editor.cursor("cottage.sun", "tilt: 35 deg|"));
  expect(inner?.parent?.range.start).toEqual(editor.cursor("cottage.sun", "|tilt: 35 deg"));
});

test("fed from and feeds are the two directions of the hierarchy", async () => {
  const editor = await open();
  const [isolator] = await editor.at<CallHierarchyItem[]>("textDocument/prepareCallHierarchy", "cottage.sun", "Q|1 is");
  expect(isolator).toMatchObject({ name: "Q1", uri: editor.uri("cottage.sun") });
  const into = await editor.connection.sendRequest<CallHierarchyIncomingCall[]>("callHierarchy/incomingCalls", {
    item: isolator,
  });
  expect(into.map(({ from }) => from.name)).toEqual(["S1"]);
  expect(into[0]?.fromRanges[0]?.start).toEqual(editor.cursor("cottage.sun", "run W1 from |S1"));
  const outOf = await editor.connection.sendRequest<CallHierarchyOutgoingCall[]>("callHierarchy/outgoingCalls", {
    item: isolator,
  });
  expect(outOf.map(({ to }) => to.name)).toEqual(["INV.pv1"]);
  // The tracker is declared on its inverter's sheet.
  expect(outOf[0]?.to.uri).toBe(editor.uri("plant.sun"));
});

test("colours are given for the file and for a stretch of it", async () => {
  const editor = await open();
  const textDocument = { uri: editor.uri("cottage.sun") };
  const whole = await editor.connection.sendRequest<SemanticTokens>("textDocument/semanticTokens/full", {
    textDocument,
  });
  const line = cottage.split("\n").findIndex((text) => text.startsWith("string S2"));
  const some = await editor.connection.sendRequest<SemanticTokens>("textDocument/semanticTokens/range", {
    textDocument,
    range: { start: { line, character: 0 }, end: { line, character: 30 } },
  });
  expect(whole.data.length).toBeGreaterThan(some.data.length);
  const legend = editor.capabilities.semanticTokensProvider?.legend;
  const first = some.data.slice(0, 15);
  // string, S2, Hollin430: each told from the one before.
  expect(first).toEqual([
    ...[line, 0, 6, legend?.tokenTypes.indexOf("type"), 0],
    ...[0, 7, 2, legend?.tokenTypes.indexOf("variable"), 1],
    ...[0, 10, 9, legend?.tokenTypes.indexOf("class"), 0],
  ]);
});

test("a rename reaches names within the values of properties", async () => {
  const editor = await open();
  await editor.open("b.sun", "run W12 from A to B\nct CT { around: W12 }\n");
  await editor.looked("b.sun");
  const edit = await editor.at<Parameters<Client["apply"]>[0]>("textDocument/rename", "b.sun", "run W|12", {
    newName: "Tails",
  });
  await editor.apply(edit);
  expect(editor.text("b.sun")).toBe("run Tails from A to B\nct CT { around: Tails }\n");
});
