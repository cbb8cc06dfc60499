import { afterEach, describe, expect, test } from "vitest";
import type { LiveParts } from "../../language-server/src/editor/diagram/live-parts.js";
import type { DiagramResult } from "../../language-server/src/editor/lsp/diagram-requests.js";
import { referenceHouse } from "../circuit/reference-house.js";
import { cottage, files } from "../editor-room/alder-cottage.js";
import { Client, type ClientOptions } from "./client.js";

let client: Client | undefined;

async function start(options: ClientOptions): Promise<Client> {
  client = await Client.start(options);
  return client;
}

afterEach(() => {
  client?.dispose();
  client = undefined;
});

function diagram(editor: Client, name: string, more: object = {}): Promise<DiagramResult> {
  return editor.connection.sendRequest("sunwright/diagram", { textDocument: { uri: editor.uri(name) }, ...more });
}
function live(editor: Client, name: string, more: object): Promise<LiveParts> {
  return editor.connection.sendRequest("sunwright/liveParts", { textDocument: { uri: editor.uri(name) }, ...more });
}

describe("the diagram of a design", () => {
  test("holds what is drawn, in the text's own ids, and where it is written", async () => {
    const editor = await start({ files });
    await editor.open("cottage.sun", cottage);
    const { diagram: drawn, places, verdict, unread, designs, entry } = await diagram(editor, "cottage.sun");
    expect(drawn.nodes.map(({ id }) => id)).toEqual(["S1", "S2", "Q1", "Q2", "F1", "F2", "INV"]);
    expect(drawn.wires.map(({ id }) => id)).toContain("W1");
    expect(designs).toEqual([{ entry: editor.uri("cottage.sun"), title: "Alder Cottage" }]);
    expect(entry).toBe(editor.uri("cottage.sun"));
    expect(unread).toEqual([]);
    expect(verdict).toMatch(/not checked/);
    const q1 = places.find(({ id }) => id === "Q1")!;
    expect(q1.uri).toBe(editor.uri("cottage.sun"));
    expect(q1.name).toEqual({
      start: editor.cursor("cottage.sun", "isolator |Q1 is"),
      end: editor.cursor("cottage.sun", "isolator Q1| is"),
    });
    expect(q1.whole.start).toEqual(editor.cursor("cottage.sun", "|isolator Q1 is"));
    for (const { id } of [...drawn.nodes, ...drawn.wires.filter(({ isRun }) => isRun)])
      expect(places.map((place) => place.id)).toContain(id);
  });

  test("says where something is written about a thing, too: readings, departures, expectations", async () => {
    const about = [
      "measured S1 on 2026-06-12 { open-circuit-voltage: 400 V }",
      'departure dc-voltage-drop on W1 because "the only route"',
      "expect string-voltage on INV.pv1",
      "expect string-voltage on nothing-at-all",
    ];
    const editor = await start({ files });
    await editor.open("cottage.sun", `${cottage}\n${about.join("\n")}\n`);
    const { places } = await diagram(editor, "cottage.sun");
    const line = editor.cursor("cottage.sun", "|measured S1 on").line;
    const at = (number: number) => places.filter(({ whole }) => whole.start.line === number).map(({ id }) => id);
    expect([0, 1, 2, 3].map((more) => at(line + more))).toEqual([["S1"], ["W1"], ["INV.pv1"], []]);
    // What leads to a thing leads to its declaration.
    expect(places.find(({ id }) => id === "S1")!.name.start).toEqual(editor.cursor("cottage.sun", "string |S1"));
  });

  test("of a file of parts is that of the site that uses it, and of the one that is asked for", async () => {
    const other = cottage.replace("Alder Cottage", "Rowan House");
    const editor = await start({ files: { ...files, "cottage.sun": cottage, "rowan.sun": other } });
    await editor.open("roof.sun", files["roof.sun"]!);
    await editor.looked("roof.sun");
    const first = await diagram(editor, "roof.sun");
    expect(first.designs.map(({ title }) => title).sort()).toEqual(["Alder Cottage", "Rowan House"]);
    const { entry, diagram: drawn } = await diagram(editor, "roof.sun", { design: editor.uri("rowan.sun") });
    expect(entry).toBe(editor.uri("rowan.sun"));
    expect(drawn.title.site).toBe("Rowan House");
    // A design that the file is not in is as good as none.
    expect((await diagram(editor, "roof.sun", { design: editor.uri("gone.sun") })).entry).toBe(first.entry);
  });

  test("keeps what a broken line last said, and says which line cannot be read", async () => {
    const editor = await start({ files });
    await editor.open("cottage.sun", cottage);
    await diagram(editor, "cottage.sun");
    await editor.replace("cottage.sun", "isolator Q1 is RotaryDc32 {", "isolator Q1 is RotaryDc32 { { 3");
    const { diagram: drawn, unread } = await diagram(editor, "cottage.sun");
    expect(drawn.nodes.map(({ id }) => id)).toContain("Q1");
    expect(unread.map(({ uri, range }) => [uri, range.start])).toContainEqual([
      editor.uri("cottage.sun"),
      editor.cursor("cottage.sun", "|isolator Q1 is"),
    ]);
  });

  test("of a text that declares nothing has nothing in it", async () => {
    const editor = await start({});
    await editor.open("empty.sun", "");
    const { diagram: drawn, designs } = await diagram(editor, "empty.sun");
    expect([drawn.nodes, drawn.wires, drawn.marks]).toEqual([[], [], []]);
    expect(designs).toHaveLength(1);
  });
});

describe("changes of designs", () => {
  test("are told of each file that they may show in, to an editor that wishes it", async () => {
    const editor = await start({ files, designChanged: true });
    const told: (readonly string[])[] = [];
    editor.connection.onNotification("sunwright/designChanged", ({ uris }: { uris: string[] }) => {
      told.push(uris);
    });
    await editor.open("cottage.sun", cottage);
    await editor.open("roof.sun", files["roof.sun"]!);
    await editor.looked("roof.sun");
    told.length = 0;
    await editor.replace("roof.sun", "power: 430 W", "power: 440 W");
    await diagram(editor, "cottage.sun");
    await expect.poll(() => told.flat()).toContain(editor.uri("cottage.sun"));
  });

  test("are not told to one that never heard of it", async () => {
    const editor = await start({ files });
    let told = 0;
    editor.connection.onNotification("sunwright/designChanged", () => {
      told++;
    });
    await editor.open("cottage.sun", cottage);
    await editor.looked("cottage.sun");
    await editor.replace("cottage.sun", "8 x", "9 x");
    await diagram(editor, "cottage.sun");
    expect(told).toBe(0);
  });
});

describe("what stays live in the diagram", () => {
  const name = "house.sun";
  const stateOf = ({ states }: LiveParts, id: string) => new Map(states).get(id);

  test("is said of every thing that is drawn, of runs too, and in words by source", async () => {
    const editor = await start({ files: { [name]: referenceHouse } });
    await editor.open(name, referenceHouse);
    const { diagram: drawn } = await diagram(editor, name);
    const parts = await live(editor, name, { open: [], light: "day", supply: "grid" });
    for (const { id } of [...drawn.nodes, ...drawn.wires]) expect(stateOf(parts, id), id).toBeDefined();
    expect(stateOf(parts, "Q1")).toEqual({ live: true, open: false });
    expect(parts.devices.map(({ id }) => id)).toContain("Q1");
    expect(parts.cautions.join(" ")).toMatch(/Prove dead/);
    expect(parts.cautions.join(" ")).toMatch(/modules cannot be switched off/);
  });

  test("an open isolator leaves its roof side live and nothing behind it that has no other source", async () => {
    const editor = await start({ files: { [name]: referenceHouse } });
    await editor.open(name, referenceHouse);
    const open = ["Q1", "Q2", "Q3", "Q4"];
    const parts = await live(editor, name, { open, light: "day", supply: "grid" });
    expect([...parts.open].sort()).toEqual(open);
    expect(stateOf(parts, "Q1")).toEqual({ live: true, open: true });
    const roof = parts.live.find(({ source }) => source === "A")!;
    expect(roof.text).toMatch(/^A in any light/);
    expect(roof.where).toEqual(["A", "Q1.in", "W1"]);
    // Modules cannot be switched off by a device; they do not feed by night.
    const byNight = await live(editor, name, { open, light: "night", supply: "grid" });
    expect(stateOf(byNight, "A")).toEqual({ live: false });
  });

  test("names that are no device's are passed over", async () => {
    const editor = await start({ files: { [name]: referenceHouse } });
    await editor.open(name, referenceHouse);
    expect((await live(editor, name, { open: ["Q1", "NIX"] })).open).toEqual(["Q1"]);
  });
});
