import { afterEach, describe, expect, test } from "vitest";
import type { TextPicture } from "../../language-server/src/editor/diagram/text-picture.js";
import { cottage, files } from "../editor-room/alder-cottage.js";
import { Client } from "./client.js";

let client: Client | undefined;

afterEach(() => {
  client?.dispose();
  client = undefined;
});

async function ask(text: string, more: object = {}): Promise<TextPicture> {
  client ??= await Client.start({ files });
  return client.connection.sendRequest("sunwright/textPicture", { text, uri: client.uri("notes.md.sun"), ...more });
}

describe("a text that stands in no file", () => {
  test("is drawn with the files beside it that it uses, and leaves nothing behind", async () => {
    const { diagram, problems, files: used } = await ask(cottage);
    expect(diagram!.nodes.map(({ id }) => id)).toContain("S1");
    expect(problems).toEqual([]);
    expect(used).toEqual([client!.uri("roof.sun"), client!.uri("plant.sun")]);
    expect(client!.published.filter(({ uri }) => uri.endsWith(".md.sun"))).toEqual([]);
  });

  test("what is open in the editor is read as it stands there", async () => {
    client = await Client.start({ files });
    await client.open("roof.sun", files["roof.sun"]!.replaceAll("Hollin430", "Hollin440"));
    await client.looked("roof.sun");
    expect((await ask(cottage)).problems.map(({ message }) => message).join(" ")).toContain("Hollin430");
  });

  test("gives a chart where one is asked for, and says which there are", async () => {
    const { chart, diagram } = await ask(cottage, { chart: "voltage:S1" });
    expect([chart!.title, diagram]).toEqual(["S1: string voltage against cell temperature", undefined]);
    expect((await ask(cottage, { chart: "voltage:S9" })).problems[0]!.message).toMatch(
      /no chart voltage:S9.*voltage:S1/,
    );
  });

  test("an excerpt is drawn as far as it goes, and nobody is told what it leaves out", async () => {
    const excerpt = "string S1 is 12 x Hollin430 {}\nrun W1 from S1 to Q1: 18 m of Solar4";
    const { diagram, problems } = await ask(excerpt);
    expect([diagram!.nodes.map(({ id }) => id), problems]).toEqual([["S1"], []]);
    expect(await ask("part Solar4 is cable { conductor-area: 4 mm2 }")).toEqual({ problems: [], files: [] });
  });

  test("what cannot be read is not drawn, and its line is told", async () => {
    const { diagram, problems } = await ask('site "A" {}\n\nstring S1 is is is {');
    expect(diagram).toBeUndefined();
    expect(problems[0]!.line).toBe(3);
  });

  test("a file that is not there is told, and counts among those that it is made of", async () => {
    const { problems, files: used } = await ask('use "attic.sun"\nstring S1 is 3 x P');
    expect(problems.map(({ message }) => message).join(" ")).toContain('"attic.sun" does not exist');
    expect(used).toEqual([client!.uri("attic.sun")]);
  });
});
