import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, test, vi } from "vitest";
import { limitRows } from "../../language-server/src/design/schema/limits.js";
import { settingRows } from "../../language-server/src/design/schema/settings.js";
import { exampleText } from "../../language-server/src/rules/example-parts.js";
import { Judge } from "../../language-server/src/rules/judge.js";
import { assessText } from "./designs.js";

/** A limit or a choice that no rule reads would be accepted from a site and change nothing. */
const fixtures = fileURLToPath(new URL("./fixtures", import.meta.url));

const limit = vi.spyOn(Judge.prototype, "limit");
const setting = vi.spyOn(Judge.prototype, "setting");
for (const rule of readdirSync(fixtures))
  for (const name of readdirSync(`${fixtures}/${rule}`))
    if (name.endsWith(".sun"))
      assessText(exampleText(readFileSync(`${fixtures}/${rule}/${name}`, "utf8"))).checks.length;
const limits = new Set(limit.mock.calls.map(([name]) => name));
const settings = new Set(setting.mock.calls.map(([name]) => name));
afterAll(() => vi.restoreAllMocks());

describe("what a site may set is read by some rule", () => {
  test.each(Object.values(limitRows).map(({ name }) => name))("the limit %s", (name) => {
    expect(limits).toContain(name);
  });
  test.each(Object.values(settingRows).map(({ name }) => name))("the choice %s", (name) => {
    expect(settings).toContain(name);
  });
});
