import { expect, it } from "vitest";
import { problemTitles } from "../../language-server/src/assessment/problem-ids.js";
import { rules } from "../../language-server/src/rules/index.js";
import { folderWith, root, sunwright, sunwrightHere } from "./program.js";

const run = (...words: string[]) => sunwright(["rules", ...words], { folder: folderWith({}) });

it("lists every rule with its severity and title, and everything that can be wrong with a text", () => {
  const { code, out } = run();
  expect(code).toBe(0);
  for (const { id, severity, title } of rules) expect(out).toMatch(line(id, severity, title));
  for (const [id, title] of Object.entries(problemTitles)) expect(out).toMatch(line(id, "", title));
  expect(out.indexOf("Strings and trackers")).toBeLessThan(out.indexOf("string-voltage"));
});

function line(id: string, severity: string, title: string): RegExp {
  const literal = title.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
  return new RegExp(`^ {2}${id} +${severity} *${literal}$`, "m");
}

it.each(rules.map(({ id }) => id))("explains %s without marks of Markdown", async (id) => {
  const rule = rules.find((each) => each.id === id)!;
  const { code, out } = await sunwrightHere(["rules", id], root);
  expect(code).toBe(0);
  expect(out.startsWith(`${id}\n\n${rule.title}`)).toBe(true);
  for (const heading of ["What it does", "Why it matters", "Where it comes from"])
    expect(out).toContain(`\n${heading}\n`);
  expect(out).toContain(rule.examples.breaks.trim().split("\n")[0]);
  expect(out).not.toMatch(/```|\]\(|^#|\*\*/m);
});

it("explains what can be wrong with a text", () => {
  expect(run("missing-unit")).toEqual({ code: 0, out: `missing-unit\n\n${problemTitles["missing-unit"]}\n`, err: "" });
});

it("offers the nearest id for one that does not exist", () => {
  expect(run("string-voltge")).toEqual({
    code: 2,
    out: "",
    err: "There is no rule string-voltge. Did you mean string-voltage? sunwright rules lists them all.\n",
  });
  expect(run("toString").code).toBe(2);
});
