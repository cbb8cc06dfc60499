import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { folderWith, sunwright, sunwrightHere } from "./program.js";

const untidy = 'site  "Reed Barn" {\r\n  rules:gb // why\r\n}\r\n';
const tidy = 'site "Reed Barn" {\r\n    rules: gb  // why\r\n}\r\n';

function read(folder: string, name: string): string {
  return readFileSync(join(folder, name), "utf8");
}

describe("sunwright format", () => {
  test("formats files in place and says which", async () => {
    const folder = folderWith({ "a.sun": untidy, "b/c.sun": tidy, "note.txt": untidy });
    const { code, out, err } = await sunwrightHere(["format", "."], folder);
    expect({ code, out, err }).toEqual({ code: 0, out: "a.sun formatted\n1 of 2 files formatted\n", err: "" });
    expect(read(folder, "a.sun")).toBe(tidy);
    expect(read(folder, "b/c.sun")).toBe(tidy);
    expect(read(folder, "note.txt")).toBe(untidy);
    expect(await sunwrightHere(["format", "."], folder)).toMatchObject({
      code: 0,
      out: "2 files, nothing to format\n",
    });
  });

  test("--check writes nothing and fails where something is not formatted", async () => {
    const folder = folderWith({ "a.sun": untidy, "b.sun": tidy });
    const { code, out } = await sunwrightHere(["format", "--check", "a.sun", "b.sun"], folder);
    expect(code).toBe(1);
    expect(out).toBe("a.sun is not formatted\n1 of 2 files not formatted: run sunwright format on them\n");
    expect(read(folder, "a.sun")).toBe(untidy);
    expect(await sunwrightHere(["format", "--check", "b.sun"], folder)).toMatchObject({ code: 0 });
  });

  test("a declaration that cannot be read stays as it is, and is told of", async () => {
    const folder = folderWith({ "a.sun": `${untidy}string   S1 is 11 x {\r\n` });
    const { code, err } = await sunwrightHere(["format", "a.sun"], folder);
    expect(code).toBe(1);
    expect(err).toBe("a.sun:4: this cannot be read, so it is left as it is.\n");
    expect(read(folder, "a.sun")).toBe(`${tidy}string   S1 is 11 x {\r\n`);
  });

  test("the byte order mark stays, and what is no text is left alone", async () => {
    const bytes = new Uint8Array([1, 0, 2]);
    const folder = folderWith({ "a.sun": `\uFEFF${untidy}`, "b.sun": bytes });
    const { code, err } = await sunwrightHere(["format", "."], folder);
    expect(code).toBe(2);
    expect(err).toContain("b.sun is no text");
    expect(read(folder, "a.sun")).toBe(`\uFEFF${tidy}`);
    expect(new Uint8Array(readFileSync(join(folder, "b.sun")))).toEqual(bytes);
  });

  test("wrong usage has exit code 2, and the built program knows the command", () => {
    const folder = folderWith({ "a.sun": untidy });
    expect(sunwright(["format"], { folder }).code).toBe(2);
    expect(sunwright(["format", "--chek", "a.sun"], { folder }).code).toBe(2);
    expect(sunwright(["format", "a.sun"], { folder }).code).toBe(0);
    expect(read(folder, "a.sun")).toBe(tidy);
  });
});
