import { afterEach, describe, expect, test } from "vitest";
import type { CompletionList, Hover, LocationLink, WorkspaceEdit } from "vscode-languageserver/node";
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

const tooMany = cottage.replace("8 x", "15 x");

describe("texts as they come", () => {
  test("lines that end in CR LF", async () => {
    const editor = await start();
    await editor.open("cottage.sun", tooMany.replaceAll("\n", "\r\n"));
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
    const finding = editor.findings("cottage.sun").find(({ code }) => code === "string-voltage")!;
    expect(finding.range.start).toEqual(editor.cursor("cottage.sun", "|15 x"));
    const fix = (await editor.actions("cottage.sun", finding)).find(({ title }) => title.includes("14"))!;
    await editor.apply(fix.edit!);
    await editor.until(() => !editor.ids("cottage.sun").includes("string-voltage"));
    expect(editor.text("cottage.sun").replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  });

  test("a mark of byte order at the start of used files", async () => {
    const editor = await start({ files: { "roof.sun": `\ufeff${roof}`, "plant.sun": `\ufeff${plant}` } });
    await editor.open("cottage.sun", `\ufeff${cottage}`);
    await editor.looked("cottage.sun");
    expect(editor.ids("cottage.sun")).toEqual([]);
  });

  test("blanks and letters of other scripts in names of files, folders and things", async () => {
    const editor = await start({
      files: {
        "Haus Süd/Dach #1 – östlich.sun": roof.replaceAll("Hollin430", "Höllin430"),
        "Haus Süd/plant.sun": plant,
      },
    });
    const name = "Haus Süd/mein Häuschen & Garten.sun";
    const text = cottage.replace("roof.sun", "Dach #1 – östlich.sun").replaceAll("Hollin430", "Höllin430");
    await editor.open(name, text);
    await editor.looked(name);
    expect(editor.ids(name)).toEqual([]);
    const [link] = await editor.at<LocationLink[]>("textDocument/definition", name, 'use "Da|ch #1');
    expect(decodeURIComponent(link!.targetUri)).toMatch(/Haus Süd\/Dach #1 – östlich\.sun$/);
    const edit = await editor.at<WorkspaceEdit>("textDocument/rename", name, "8 x Höl|lin430", { newName: "Ähre" });
    expect(Object.values(edit.changes!).flat()).toHaveLength(3);
  });

  test("binary junk is a problem at a place, and the server goes on", async () => {
    const junk = Uint8Array.from({ length: 4096 }, (_, index) => (index * 197 + 31) % 256);
    const editor = await start({ files: { ...files, "junk.sun": junk } });
    await editor.open("cottage.sun", cottage.replace('use "roof.sun"', 'use "junk.sun"\nuse "roof.sun"'));
    await editor.open("wild.sun", new TextDecoder().decode(junk));
    await editor.until(() => editor.findings("wild.sun").length > 0);
    await editor.until(() => editor.findings("junk.sun").length > 0);
    const hover = await editor.at<Hover>("textDocument/hover", "cottage.sun", "string S|1");
    expect(JSON.stringify(hover.contents)).toContain("PV string");
  });

  test("an empty file, and one of comments alone", async () => {
    const editor = await start({});
    await editor.open("empty.sun", "");
    await editor.open("remarks.sun", "// nothing yet\n/* nor here");
    await editor.looked("empty.sun");
    await editor.until(() => editor.ids("remarks.sun").includes("unclosed-comment"));
    expect(editor.ids("empty.sun")).toEqual([]);
    const list = await editor.at<CompletionList>("textDocument/completion", "empty.sun", "|");
    expect(list.items.map(({ label }) => label)).toContain("site");
  });

  test("braces ten thousand deep, and a line of five megabytes", async () => {
    const editor = await start({});
    await editor.open("deep.sun", `board B ${"{ rcd R ".repeat(10_000)}`);
    await editor.until(() => editor.ids("deep.sun").includes("too-deep"));
    await editor.open("long.sun", `spd F1 { note: "${"a".repeat(5_000_000)}" }\n`);
    await editor.until(() => editor.findings("long.sun").length > 0);
    expect(editor.errors).toEqual([]);
  });
});

describe("files that use each other", () => {
  test("a circle is named at its use line", async () => {
    const editor = await start({ files: { "b.sun": 'use "a.sun"\npart P is module { power: 3 W }\n' } });
    await editor.open("a.sun", 'use "b.sun"\npart Q is module { power: 3 W }\n');
    await editor.until(() => editor.ids("a.sun").includes("use-cycle"));
  });

  test("a file that is deleted while it is open counts as the editor has it, until it is closed", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await editor.open("roof.sun", roof);
    await editor.looked("roof.sun");
    await editor.remove("roof.sun");
    await editor.replace("cottage.sun", "8 x", "15 x");
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
    expect(editor.ids("cottage.sun")).not.toContain("unknown-name");
    // What is typed into it goes on to be judged in the design that uses it.
    await editor.replace("roof.sun", "open-circuit-voltage: 38.9 V", "open-circuit-voltage: 30.0 V");
    await editor.until(() => !editor.ids("cottage.sun").includes("string-voltage"));
    await editor.close("roof.sun");
    await editor.until(() => editor.ids("cottage.sun").includes("unknown-name"));
    expect(editor.all("roof.sun")).toEqual([]);
    expect(editor.errors).toEqual([]);
  });

  test("a missing file is named at its use line, and is there as soon as it is", async () => {
    const editor = await start({ files: { "plant.sun": plant } });
    await editor.open("cottage.sun", cottage);
    await editor.until(() => editor.ids("cottage.sun").includes("file-missing"));
    const problem = editor.findings("cottage.sun").find(({ code }) => code === "file-missing")!;
    expect(problem.range.start.line).toBe(0);
    await editor.write("roof.sun", roof);
    await editor.until(() => editor.ids("cottage.sun").length === 0);
    await editor.remove("roof.sun");
    await editor.until(() => editor.ids("cottage.sun").includes("file-missing"));
  });

  test("a folder in place of a file", async () => {
    const editor = await start({ files: { ...files, "parts/more.sun": "" } });
    await editor.open("cottage.sun", `use "parts"\n${cottage}`);
    await editor.until(() => editor.findings("cottage.sun").some(({ range }) => range.start.line === 0));
  });

  test("a parts file changed behind the editor's back", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await editor.looked("cottage.sun");
    await editor.write("plant.sun", plant.replace("max-dc-voltage: 600 V", "max-dc-voltage: 300 V"));
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
  });

  test("an edit of a parts file that is closed without saving does not count", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    await editor.open("plant.sun", plant);
    await editor.replace("plant.sun", "max-dc-voltage: 600 V", "max-dc-voltage: 300 V");
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
    await editor.close("plant.sun");
    await editor.until(() => !editor.ids("cottage.sun").includes("string-voltage"));
  });
});

describe("a session without a folder", () => {
  test("a file by itself is answered for as soon as it is open, with what it uses", async () => {
    const editor = await start({ files, asWorkspace: false });
    await editor.open("cottage.sun", tooMany);
    const hover = await editor.at<Hover>("textDocument/hover", "cottage.sun", "string S|1");
    expect(JSON.stringify(hover.contents)).toContain("string-voltage");
    await editor.until(() => editor.ids("cottage.sun").includes("string-voltage"));
  });

  test("a file that was never saved is forgotten when it is closed", async () => {
    const editor = await start({ asWorkspace: false });
    await editor.open("draft.sun", "string S1 is 2 x Nothing\n");
    await editor.until(() => editor.findings("draft.sun").length > 0);
    await editor.close("draft.sun");
    await editor.until(() => editor.all("draft.sun").length === 0);
  });
});

describe("a server under stress", () => {
  test("a request that makes no sense fails alone", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    const nonsense = { textDocument: { uri: editor.uri("cottage.sun") }, position: null };
    await expect(editor.connection.sendRequest("textDocument/hover", nonsense)).rejects.toThrow();
    await expect(editor.at("textDocument/rename", "cottage.sun", "string S|1", { newName: 7 })).rejects.toThrow();
    const hover = await editor.at<Hover>("textDocument/hover", "cottage.sun", "string S|1");
    expect(JSON.stringify(hover.contents)).toContain("PV string");
  });

  test("after a burst of keys the last text is the one that is shown", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    for (let count = 9; count <= 15; count++) void editor.replace("cottage.sun", `${count - 1} x`, `${count} x`);
    await editor.until(() =>
      editor.findings("cottage.sun").some(({ message }) => String(message).startsWith("S1: 15 ×")),
    );
    const hover = await editor.at<Hover>("textDocument/hover", "cottage.sun", "string S|1");
    expect(JSON.stringify(hover.contents)).toContain("15 × Hollin430");
  });

  test("requests for a document that is not known", async () => {
    const editor = await start();
    const elsewhere = { textDocument: { uri: "file:///nowhere/a.sun" }, position: { line: 0, character: 0 } };
    await editor.connection.sendRequest("textDocument/hover", elsewhere).catch(() => undefined);
    await editor.open("cottage.sun", cottage);
    await editor.looked("cottage.sun");
    expect(await editor.stop()).toBe(0);
  });

  test("exit without shutdown is told by the exit code", async () => {
    const editor = await start();
    await editor.open("cottage.sun", cottage);
    expect(await editor.leave()).toBe(1);
  });
});
