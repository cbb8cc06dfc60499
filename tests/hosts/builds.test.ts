import { readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { root } from "../../extension/start/programs.js";
import { type BuildClient, startBrowserBuild, startNodeBuild } from "./build-client.js";

const folder = join(root, "examples");
const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".sun"))
  .map((name) => name.split(sep).join("/"))
  .sort();

let builds: readonly BuildClient[] = [];

beforeAll(async () => {
  builds = await Promise.all([startNodeBuild(folder), startBrowserBuild(folder)]);
});

afterAll(async () => {
  for (const build of builds) await build.stop();
});

/** Opens every file and waits until each has been told of. */
async function all({ connection, shown }: BuildClient): Promise<Record<string, string>> {
  for (const name of files) {
    const uri = pathToFileURL(join(folder, name)).toString();
    const text = readFileSync(join(folder, name), "utf8");
    await connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri, languageId: "sunwright", version: 1, text },
    });
  }
  // A request is answered when everything before it has been computed.
  const uris = files.map((name) => pathToFileURL(join(folder, name)).toString());
  for (const uri of uris) await connection.sendRequest("textDocument/documentSymbol", { textDocument: { uri } });
  await expect.poll(() => uris.filter((uri) => !shown.has(uri)), { timeout: 30_000 }).toEqual([]);
  return Object.fromEntries(uris.map((uri) => [uri, JSON.stringify(shown.get(uri), undefined, 1)]));
}

test("the build for browsers shows the same of every example as the build for Node, to the letter", async () => {
  const [node, browser] = await Promise.all(builds.map(all));
  expect(browser).toEqual(node);
  // Training designs are faulty: were all silent, the comparison would say nothing.
  const findings = Object.values(node!).flatMap((shown) => JSON.parse(shown) as { code: string }[]);
  expect(new Set(findings.map(({ code }) => code)).size).toBeGreaterThan(20);
});
