import { execFileSync } from "node:child_process";
import { chmodSync, readFileSync, rmSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { findFiles } from "../../language-server/src/cli/inputs.js";
import { readFiles } from "../../language-server/src/cli/read.js";
import { design } from "./designs.js";
import { folderWith, root, sunwright, sunwrightHere } from "./program.js";

const good = design(10);

/** Checks what is bad beside a good design: the message, exit code 2, and the good design's result all the same. */
async function checkedBeside(folder: string, ...words: string[]): Promise<string> {
  const { code, out, err } = await sunwrightHere(["check", ...words, "good.sun"], folder);
  expect(out).toContain("good.sun  Reed Barn");
  expect(out).toContain("no finding from the rules checked");
  expect(code).toBe(2);
  return err;
}

describe("what cannot be read is told, exit code 2, and the rest is checked", () => {
  it("a missing file", async () => {
    const err = await checkedBeside(folderWith({ "good.sun": good }), "gone.sun");
    expect(err).toBe("gone.sun does not exist. Look at its spelling, and at the folder you are in.\n");
  });

  it("a missing file in a missing folder, and one below a file", async () => {
    const err = await checkedBeside(folderWith({ "good.sun": good }), "no/gone.sun", "good.sun/x.sun");
    expect(err).toContain("no/gone.sun does not exist.");
    expect(err).toContain("good.sun/x.sun lies below something that is a file, not a folder.");
  });

  it("a file of another kind", async () => {
    const err = await checkedBeside(folderWith({ "good.sun": good, "notes.txt": "" }), "notes.txt");
    expect(err).toBe("notes.txt is no .sun file. Name a design, or the folder it is in.\n");
  });

  it("a folder without designs, a pattern without matches, an empty word", async () => {
    const err = await checkedBeside(folderWith({ "good.sun": good, "papers/a.txt": "" }), "papers", "x*.sun", "");
    expect(err).toContain("papers holds no .sun file, nor does any folder below it.\n");
    expect(err).toContain("x*.sun matches no .sun file.");
    expect(err).toContain('"" names nothing.');
  });

  it("binary junk, UTF-16 and text that is not UTF-8", async () => {
    const junk = Uint8Array.from({ length: 4096 }, (_, index) => (index * 7919) % 256);
    const folder = folderWith({
      "good.sun": good,
      "junk.sun": junk,
      "wide.sun": Buffer.from(`\ufeff${good}`, "utf16le"),
      "latin.sun": Buffer.from('site "Süd" {}', "latin1"),
    });
    const err = await checkedBeside(folder, "junk.sun", "wide.sun", "latin.sun");
    expect(err).toContain("junk.sun is no text: its byte 1 is zero. A design is UTF-8 text.\n");
    expect(err).toContain("wide.sun is written in UTF-16. Save it as UTF-8.\n");
    expect(err).toContain("latin.sun is not written in UTF-8.");
  });

  it("a link that leads nowhere or back to itself, also where a folder is asked for", async () => {
    const folder = folderWith({ "good.sun": good });
    symlinkSync("nowhere.sun", join(folder, "dangling.sun"));
    symlinkSync("loop.sun", join(folder, "loop.sun"));
    symlinkSync("good.sun", join(folder, "linked.sun"));
    symlinkSync(".", join(folder, "round"));
    const { code, out, err } = await sunwrightHere(["check", "."], folder);
    expect(code).toBe(2);
    expect(err).toContain("dangling.sun does not exist.");
    expect(err).toContain("loop.sun is a link that leads back to itself.");
    expect(out).toContain("\nlinked.sun  Reed Barn");
    expect(out).toContain("2 files, 2 designs");
  });

  it.skipIf(process.platform === "win32")("a pipe, without waiting for somebody to write into it", () => {
    const folder = folderWith({ "good.sun": good });
    execFileSync("mkfifo", [join(folder, "pipe.sun")]);
    const { code, out, err } = sunwright(["check", "pipe.sun", "good.sun"], { folder });
    expect({ code, err }).toEqual({ code: 2, err: "pipe.sun is no ordinary file.\n" });
    expect(out).toContain("good.sun  Reed Barn");
  });

  it("a file that vanishes after the folder was looked through", async () => {
    const folder = folderWith({ "good.sun": good, "going.sun": good });
    const { files } = await findFiles(["."], folder);
    rmSync(join(folder, "going.sun"));
    const { asked, unreadable } = readFiles(files, folder);
    expect(asked).toHaveLength(1);
    expect(unreadable).toEqual([
      { file: "going.sun", message: "going.sun does not exist. Look at its spelling, and at the folder you are in." },
    ]);
  });

  it("nothing readable at all: only the message", () => {
    const { code, out, err } = sunwright(["check", "gone.sun"], { folder: folderWith({}) });
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain("gone.sun does not exist.");
  });
});

const isPosix = process.platform !== "win32" && process.getuid !== undefined;
/** Root may read everything: the program then runs as nobody. */
const user = process.getuid?.() === 0 ? 65534 : undefined;

it.skipIf(!isPosix)("a folder or file without read permission", () => {
  const folder = folderWith({ "good.sun": good, "locked/in.sun": good, "shut.sun": good });
  chmodSync(folder, 0o755);
  chmodSync(join(folder, "locked"), 0);
  chmodSync(join(folder, "shut.sun"), 0);
  const { code, out, err } = sunwright(["check", ".", "locked/in.sun"], { folder, user });
  chmodSync(join(folder, "locked"), 0o700);
  expect(code).toBe(2);
  expect(err).toContain("locked may not be read by you. Ask for permission to read it.\n");
  expect(err).toContain("locked/in.sun may not be read by you.");
  expect(err).toContain("shut.sun may not be read by you.");
  expect(out).toContain("good.sun  Reed Barn");
});

describe("what is wrong with a text is a problem of it, exit code 1", () => {
  it("used files that are missing, no design, no text, or a folder", async () => {
    const lines = ["gone.sun", "notes.txt", "junk.sun", "inner.sun"].map((path) => `use "${path}"\n`);
    const folder = folderWith({
      "barn.sun": lines.join("") + good,
      "notes.txt": "",
      "junk.sun": Uint8Array.of(0, 1, 2),
      "inner.sun/x.txt": "",
    });
    const { code, out, err } = await sunwrightHere(["check", "barn.sun"], folder);
    expect({ code, err }).toEqual({ code: 1, err: "" });
    expect(out).toMatch(/ 1:5 +error +file-missing\n +"gone\.sun" does not exist/);
    expect(out).toMatch(/ 2:5 +error +file-unreadable\n +"notes\.txt" is not a design file/);
    expect(out).toMatch(/ 3:5 +error +file-unreadable\n +"junk\.sun" is no text/);
    expect(out).toMatch(/ 4:5 +error +file-unreadable\n +"inner\.sun" is a folder/);
  });

  it("files that use each other in a circle, with or without a site", async () => {
    const circle = { "a.sun": 'use "b.sun"\n', "b.sun": 'use "a.sun"\n' };
    for (const files of [circle, { ...circle, "a.sun": `use "b.sun"\n${good}` }]) {
      const { code, out } = await sunwrightHere(["check", "."], folderWith(files));
      expect(code).toBe(1);
      expect(out).toMatch(/a\.sun.*\n {2}1:5 +error +use-cycle/);
      expect(out).toMatch(/b\.sun.*\n {2}1:5 +error +use-cycle/);
    }
  });

  it("a line of 5 MB, and everything else in the file is checked", async () => {
    const folder = folderWith({ "long.sun": `${design(15)}load L1 { note: "${"x".repeat(5_000_000)}" }\n` });
    const { code, out } = await sunwrightHere(["check", "long.sun"], folder);
    expect(code).toBe(1);
    expect(out).toMatch(/error +string-voltage/);
    expect(out).toMatch(/error +too-long/);
    expect(out.length).toBeLessThan(20_000);
  });

  it("10,000 nested braces", async () => {
    const folder = folderWith({ "deep.sun": `${good}load L1 ${"{".repeat(10_000)}` });
    const { code, out } = await sunwrightHere(["check", "deep.sun"], folder);
    expect(code).toBe(1);
    expect(out).toMatch(/error +too-deep/);
  });
});

it("shows what would control the terminal instead of obeying it", async () => {
  const folder = folderWith({ "barn.sun": design(15).replace("Reed Barn", "Reed \u001b[2JBarn \u202e") });
  const { out } = await sunwrightHere(["check", "barn.sun"], folder);
  expect(out).toContain("Reed \ufffd[2JBarn \ufffd");
  expect(out).not.toContain("\u001b");
});

it("stops quietly when its reader has seen enough", () => {
  const folder = folderWith(Object.fromEntries(Array.from({ length: 60 }, (_, n) => [`${n}.sun`, design(15)])));
  const program = join(root, "language-server", "dist", "cli.mjs");
  const line = `"${process.execPath}" "${program}" check . --show-working | head -n 1`;
  expect(execFileSync("sh", ["-c", `${line} 2>&1`], { cwd: folder, encoding: "utf8" })).toBe("0.sun  Reed Barn\n");
});

it("wraps at the width of the terminal, and writes into no file", async () => {
  const folder = folderWith({ "good.sun": good });
  const { code, out, err } = await sunwrightHere(["check", "good.sun"], folder, 60);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(60);
  expect(readFileSync(join(folder, "good.sun"), "utf8")).toBe(good);
});
