import { afterEach, expect, test } from "vitest";
import type { Range, WorkspaceEdit } from "vscode-languageserver/node";
import { Client } from "./client.js";

let client: Client | undefined;
afterEach(() => {
  client?.dispose();
  client = undefined;
});

const line = "run W3 from GRID to CHG.grid";
const text = `supply GRID { voltage: 230 V }
changeover CHG {}
inverter INV { backup { power: 3 kW } }
${line}
run W4 from INV.backup to CHG.backup
`;

test("the end of a run under the cursor is renamed, also right after lines have moved", async () => {
  client = await Client.start();
  await client.open("a.sun", text);
  await client.looked("a.sun");
  for (let round = 0; round < 5; round++) {
    // Nobody waits for the server between a key and the next.
    const typed = client.replace("a.sun", line, `// ${round}\n\n${line}`);
    const asked = client.at<Range>("textDocument/prepareRename", "a.sun", "to C|HG.grid");
    const edited = client.at<WorkspaceEdit>("textDocument/rename", "a.sun", "to CHG|.grid", { newName: "BYPASS" });
    await typed;
    const { start, end } = await asked;
    const now = client.text("a.sun");
    expect(now.slice(client.offset("a.sun", start), client.offset("a.sun", end))).toBe("CHG");
    const edits = (await edited).changes![client.uri("a.sun")]!;
    expect(edits).toHaveLength(3);
    for (const { range } of edits)
      expect(now.slice(client.offset("a.sun", range.start), client.offset("a.sun", range.end))).toBe("CHG");
  }
  expect(client.errors).toEqual([]);
});
