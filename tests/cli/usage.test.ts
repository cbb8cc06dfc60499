import { expect, it } from "vitest";
import { design } from "./designs.js";
import { folderWith, sunwright, sunwrightHere } from "./program.js";

it.each([
  [[], "Say what to do: check, drill, format, live, isolate, draw or rules."],
  [["--quiet"], "Say what to do: check, drill, format, live, isolate, draw or rules."],
  [["chekc", "barn.sun"], "There is no command chekc. There are check, drill, format, live, isolate, draw and rules."],
  [["check"], "check needs at least one file, folder or pattern."],
  [["drill"], "drill needs at least one file, folder or pattern."],
  [["check", "barn.sun", "--formatt", "json"], "Unknown option `--formatt`. See sunwright check --help."],
  [["check", "barn.sun", "--fail-onn", "note"], "Unknown option `--fail-onn`. See sunwright check --help."],
  [["check", "barn.sun", "--format"], "option `--format <format>` value is missing. See sunwright check --help."],
  [["check", "barn.sun", "--format", "xml"], "--format cannot be xml. It is one of text, json."],
  [
    ["check", "barn.sun", "--format", "json", "--format", "json"],
    "--format is written 2 times. It is one of text, json.",
  ],
  [["check", "barn.sun", "--fail-on", "never"], "--fail-on cannot be never. It is one of error, warning, note."],
  [["drill", "barn.sun", "--quiet"], "Unknown option `--quiet`. See sunwright drill --help."],
  [["rules", "string-voltage", "spare"], "Unused args: `spare`. See sunwright rules --help."],
])("%j is wrong usage and says what is right", async (words, message) => {
  const folder = folderWith({ "barn.sun": design(10) });
  expect(await sunwrightHere(words, folder)).toEqual({ code: 2, out: "", err: `${message}\n` });
});

it("prints help with exit codes, for all and for one command", () => {
  const folder = folderWith({});
  const all = sunwright(["--help"], { folder });
  expect(all.code).toBe(0);
  for (const command of ["check [...paths]", "drill [...paths]", "live [file]", "isolate [file] [item]", "rules [id]"])
    expect(all.out).toContain(command);
  expect(all.out).toContain("Exit code: 0 ");
  const one = sunwright(["check", "--help"], { folder });
  expect(one.code).toBe(0);
  for (const option of ["--format", "--show-working", "--assumptions", "--fail-on", "--quiet", "--set"])
    expect(one.out).toContain(option);
  const other = sunwright(["isolate", "--help"], { folder });
  expect(other.out).toContain("Exit code: 0 where devices make all of it dead");
});

it("prints its version", () => {
  const { code, out } = sunwright(["--version"], { folder: folderWith({}) });
  expect(code).toBe(0);
  expect(out).toMatch(/^sunwright\/\d+\.\d+\.\d+ /);
});
