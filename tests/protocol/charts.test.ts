import { afterEach, describe, expect, test } from "vitest";
import type { ChartResult } from "../../language-server/src/editor/lsp/chart-requests.js";
import { cottage, files } from "../editor-room/alder-cottage.js";
import { Client } from "./client.js";

let client: Client | undefined;

afterEach(() => {
  client?.dispose();
  client = undefined;
});

async function open(text: string): Promise<Client> {
  client = await Client.start({ files });
  await client.open("cottage.sun", text);
  return client;
}
function ask(editor: Client, chart: string, more: object = {}): Promise<ChartResult> {
  return editor.connection.sendRequest("sunwright/chart", {
    textDocument: { uri: editor.uri("cottage.sun") },
    chart,
    ...more,
  });
}

describe("charts of a design", () => {
  test("are named, and the one that is asked for comes as a picture and in figures", async () => {
    const editor = await open(cottage);
    const { charts, chart, title, entry, verdict } = await ask(editor, "voltage:S2");
    expect(charts.map(({ name }) => name)).toEqual([
      "voltage:S1",
      "voltage:S2",
      "curve:INV.pv1",
      "curve:INV.pv2",
      "margins",
      "drop",
    ]);
    expect(chart).toMatchObject({ name: "voltage:S2", sort: "voltage", about: "S2" });
    expect(chart!.picture.title).toBe(chart!.title);
    expect(title.site).toBe("Alder Cottage");
    expect(entry).toBe(editor.uri("cottage.sun"));
    expect(verdict).toMatch(/not checked/);
    const limits = chart!.tables.find(({ caption }) => caption.startsWith("Limits"))!;
    expect(limits.rows.map(({ cells }) => cells.slice(0, 2))).toContainEqual(["INV", "600 V"]);
    // Those too that lie beyond the picture.
    expect(limits.rows.map(({ cells }) => cells.slice(0, 2))).toContainEqual(["Hollin430", "1500 V"]);
  });

  test("one that is not there any more is stood in for by the first of its sort", async () => {
    const editor = await open(cottage);
    expect((await ask(editor, "voltage:S9")).chart?.name).toBe("voltage:S1");
    expect((await ask(editor, "curve")).chart?.name).toBe("curve:INV.pv1");
    expect((await ask(editor, "nothing")).chart).toBeUndefined();
  });

  test("of a design without a string there are those of the whole alone", async () => {
    const editor = await open('site "Bare" { rules: gb }');
    const { charts, chart } = await ask(editor, "voltage");
    expect(charts.map(({ name }) => name)).toEqual(["margins", "drop"]);
    expect(chart).toBeUndefined();
  });

  test("conditions are followed; impossible ones are as good as none", async () => {
    const editor = await open(cottage);
    const at = async (conditions?: object) => (await ask(editor, "curve:INV.pv1", { conditions })).chart!;
    const words = (chart: { picture: unknown }) => JSON.stringify(chart.picture);
    expect(words(await at({ irradiance: 800, cell: 318.15 }))).toContain("800 W/m² and cells at 45 °C");
    for (const conditions of [undefined, { irradiance: -1, cell: 298.15 }, { irradiance: "many", cell: null }])
      expect(words(await at(conditions))).toContain("1000 W/m² and cells at 25 °C");
  });

  test("each margin leads to where its check is shown, each run to its line", async () => {
    const editor = await open(cottage.replace("8 x", "16 x"));
    const { chart, places } = await ask(editor, "margins");
    const { rows } = chart!.tables[0]!;
    const row = rows.find(({ cells }) => cells[0] === "S1" && cells[1] === "string-voltage");
    expect(row!.cells[5]).toBe("finding");
    const place = places.find(({ id }) => id === row!.id)!;
    expect(place.uri).toBe(editor.uri("cottage.sun"));
    expect(place.name.start.line).toBe(editor.cursor("cottage.sun", "|string S1").line);
    for (const { id } of rows) expect(places.map((each) => each.id)).toContain(id);
    const drop = await ask(editor, "drop");
    for (const { id } of drop.chart!.tables[0]!.rows) expect(drop.places.map((each) => each.id)).toContain(id);
  });
});
