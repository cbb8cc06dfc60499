import { afterEach, describe, expect, test } from "vitest";
import { cottage, files } from "../editor-room/alder-cottage.js";
import { Client, type ClientOptions } from "./client.js";

let client: Client | undefined;

interface Told {
  readonly uri: string;
  readonly designs: readonly { readonly entry: string; readonly text: string; readonly sort: string }[];
}

async function start(options: ClientOptions = { files }): Promise<{ editor: Client; told: Told[] }> {
  const editor = await Client.start(options);
  client = editor;
  const told: Told[] = [];
  editor.connection.onNotification("sunwright/verdict", (each: Told) => {
    told.push(each);
    for (const listener of [...waiting]) listener();
  });
  return { editor, told };
}

const waiting = new Set<() => void>();

/** Resolves once a condition holds, which is asked at each verdict; the test's own time limit ends a vain wait. */
async function until(condition: () => boolean): Promise<void> {
  if (condition()) return;
  await new Promise<void>((resolve) => {
    const listener = (): void => {
      if (!condition()) return;
      waiting.delete(listener);
      resolve();
    };
    waiting.add(listener);
  });
}

afterEach(() => {
  client?.dispose();
  client = undefined;
  waiting.clear();
});

describe("the verdict of an open file", () => {
  test("comes with the file, again when an edit changes it, and not when one does not", async () => {
    const { editor, told } = await start();
    await editor.open("cottage.sun", cottage);
    await until(() => told.length === 1);
    expect(told[0]?.uri).toBe(editor.uri("cottage.sun"));
    expect(told[0]?.designs.map(({ entry, sort }) => [entry, sort])).toEqual([
      [editor.uri("cottage.sun"), "not-checked"],
    ]);
    await editor.replace("cottage.sun", "8 x Hollin430", "17 x Hollin430");
    await until(() => told.some(({ designs }) => designs[0]?.sort === "findings"));
    const before = told.length;
    await editor.replace("cottage.sun", 'site "Alder Cottage" {', '// a remark\nsite "Alder Cottage" {');
    await editor.replace("cottage.sun", "17 x Hollin430", "8 x Hollin430");
    await until(() => told.at(-1)?.designs[0]?.sort === "not-checked");
    expect(told.length).toBe(before + 1);
    expect(editor.errors).toEqual([]);
  });

  test("follows what is supposed, and an edit of another file that is open", async () => {
    const { editor, told } = await start();
    await editor.open("cottage.sun", cottage);
    await until(() => told.length === 1);
    const about = { textDocument: { uri: editor.uri("cottage.sun") } };
    await editor.connection.sendRequest("sunwright/whatIf", { ...about, text: "S1.count = 15" });
    await until(() => told.at(-1)?.designs[0]?.text.startsWith("Alder Cottage, what if: ") === true);
    await editor.connection.sendRequest("sunwright/whatIf", { ...about, text: "" });
    await until(() => told.at(-1)?.designs[0]?.text.startsWith("Alder Cottage: ") === true);
  });

  test("its places lead into the text", async () => {
    const { editor, told } = await start();
    await editor.open("cottage.sun", cottage);
    await until(() => told.length === 1);
    const places = await editor.connection.sendRequest<
      { readonly sort: string; readonly title: string; readonly location: { readonly uri: string } }[]
    >("sunwright/verdictPlaces", { textDocument: { uri: editor.uri("cottage.sun") } });
    expect(new Set(places.map(({ sort }) => sort))).toEqual(new Set(["not-checked", "margin"]));
    expect(places.every(({ location }) => location.uri.startsWith("file:///"))).toBe(true);
  });
});

describe("whoever leads through a new site or part", () => {
  test("is told of sheets, judged by the language, and given the text", async () => {
    const { editor } = await start({ files });
    const ask = <Result>(method: string, params: object = {}): Promise<Result> =>
      editor.connection.sendRequest<Result>(`sunwright/${method}`, params);
    const kinds = await ask<{ kind: string }[]>("sheetKinds");
    expect(kinds.map(({ kind }) => kind)).toContain("inverter");
    expect(await ask("sheet", { kind: "module" })).toMatchObject({ title: "PV module" });
    expect(await ask("sheet", { kind: "nonsense" })).toBeNull();
    expect(await ask("answerProblem", { kind: "module", property: "power", answer: "430 W" })).toBeNull();
    expect(await ask("answerProblem", { kind: "module", property: "power", answer: "430" })).toMatch(/its unit/);
    expect(await ask("nameProblem", { name: "4" })).toMatch(/no name/);
    const parts = await ask<{ name: string; uri: string }[]>("parts", { kinds: ["module"] });
    expect(parts.map(({ name }) => name)).toEqual(["Hollin430"]);
    const plan = { name: "Rook End", supply: {}, strings: [{ part: parts[0], count: "9" }] };
    const { text } = await ask<{ text: string }>("siteText", { plan, uri: editor.uri("rook.sun") });
    expect(text).toContain("string S1 is 9 x Hollin430 {");
    await editor.open("rook.sun", text);
    await editor.looked("rook.sun");
    expect(editor.ids("rook.sun")).toEqual(["unwired-item"]);
    expect(editor.errors).toEqual([]);
  });

  test("needs no folder", async () => {
    const { editor } = await start({ asWorkspace: false });
    expect(await editor.connection.sendRequest("sunwright/parts", { kinds: ["module"] })).toEqual([]);
  });
});

describe("the words of the interface", () => {
  test("are the reader's where the client has them; what a rule says stays as it is", async () => {
    const words = { "{0} not checked": "[{0} nòt chéckéd]", "Working:": "[Wòrking:]" };
    const { editor, told } = await start({ files, options: { words } });
    await editor.open("cottage.sun", cottage.replace("8 x Hollin430", "17 x Hollin430"));
    await until(() => told.length > 0);
    expect(told[0]?.designs[0]?.text).toMatch(/\[\d+ nòt chéckéd\]/);
    const hover = await editor.at("textDocument/hover", "cottage.sun", "string S|1");
    expect(JSON.stringify(hover)).toContain("[Wòrking:]");
    const finding = editor.findings("cottage.sun").find(({ code }) => code === "string-voltage");
    expect(finding?.message).toMatch(/^S1: 17 × Hollin430 reach /);
  });
});
