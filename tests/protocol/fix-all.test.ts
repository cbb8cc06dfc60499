import { afterEach, expect, test } from "vitest";
import type { CodeAction } from "vscode-languageserver/node";
import { files } from "../editor-room/alder-cottage.js";
import { Client } from "./client.js";

let client: Client | undefined;
afterEach(() => {
  client?.dispose();
  client = undefined;
});

test("corrections on saving come only where they are asked for, and mend what they can", async () => {
  client = await Client.start({ files });
  expect(client.capabilities.codeActionProvider).toMatchObject({
    codeActionKinds: ["quickfix", "refactor.extract", "refactor.rewrite", "refactor.move", "source.fixAll.sunwright"],
  });
  await client.open("a.sun", "supply G { voltage: 230,5 V }\nrun W from A to B: 3,5 m of C\n");
  await client.until(() => client!.ids("a.sun").includes("decimal-comma"));
  const ask = (only?: string[]): Promise<CodeAction[]> =>
    client!.connection.sendRequest("textDocument/codeAction", {
      textDocument: { uri: client!.uri("a.sun") },
      range: { start: { line: 0, character: 0 }, end: { line: 1, character: 30 } },
      context: { diagnostics: [], ...(only && { only }) },
    });
  expect((await ask()).filter(({ kind }) => kind !== "quickfix")).toEqual([]);
  expect((await ask(["quickfix"])).length).toBeGreaterThan(0);
  expect(await ask(["refactor"])).toEqual([]);
  for (const kind of ["source", "source.fixAll"]) expect(await ask([kind])).toHaveLength(1);
  const [all] = await ask(["source.fixAll.sunwright"]);
  expect(all?.title).toBe("Correct 2 spellings that can mean only one thing");
  await client.apply(all!.edit!);
  expect(client.text("a.sun")).toBe("supply G { voltage: 230.5 V }\nrun W from A to B: 3.5 m of C\n");
  await client.until(() => !client!.ids("a.sun").includes("decimal-comma"));
  expect(await ask(["source.fixAll.sunwright"])).toEqual([]);
  expect(client.errors).toEqual([]);
});
