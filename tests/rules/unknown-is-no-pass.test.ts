import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import { label } from "../../language-server/src/design/facts.js";
import { assessedInTurn, fixtureText, textProblems } from "./designs.js";
import { describeCheck } from "./expectations.js";

/**
 * Takes every stated property of every faulty fixture away, one at a time. What was found must then be found still, or
 * be said not to be checked: a fact that nobody states never makes a fault go away.
 */

/** Where taking a property away does mend the fault: what it says is then not so, or something else says it. */
const mends = new Map([
  ["building-voltage dwelling-dc-voltage", "the site's own limit; without it the rule set's holds"],
  ["tracker-short-circuit short-circuit-factor", "the site's own factor; without it the rule set's holds"],
  ["tracker-short-circuit bifacial-gain", "a gain counts where the design declares one"],
  ["string-fuse fused-poles", "stated on the item over what its part says"],
  ["dc-cable-current grouped-circuits", "one circuit is assumed, and listed as assumed"],
  ["dc-voltage-drop conductor-coating", "plain copper is assumed, and listed as assumed"],
  ["surge-second built-in-surge-protection", "no device is then known of: surge-needed says whether one must be"],
  ["backup-earth used-in", "an electrode is taken to be in use in every mode, and the check says so"],
  ["ac-protection max-upstream-device", "a port that names no largest device allows any"],
  ["disconnection max-loop-impedance", "its own sheet's figure; without it the tables give one"],
  ["rcd-shared rcd-side", "the site's own choice; without it the rule set's holds"],
  ["dc-isolator dc-isolator", "the site's own choice; without it the rule set's holds"],
  ["reading-voltage open-circuit-voltage", "nothing is read then: reading-missing says what is still to be read"],
  ["reading-current short-circuit-current", "nothing is read then: reading-missing says what is still to be read"],
  ["reading-insulation insulation-resistance", "nothing is read then: reading-missing says what is still to be read"],
  ["reading-polarity polarity", "nothing is read then: reading-missing says what is still to be read"],
  ["reading-polarity open-circuit-voltage", "nothing is read then: reading-missing says what is still to be read"],
  ["reading-loop loop-impedance", "nothing is read then: reading-missing says what is still to be read"],
  ["reading-loop fault-current", "nothing is read then: reading-missing says what is still to be read"],
  ["reading-loop residual-trip-time", "nothing is read then: reading-missing says what is still to be read"],
  ["reading-loop electrode-resistance", "nothing is read then: reading-missing says what is still to be read"],
  ["reading-voltage voltage", "nothing is read then"],
]);

const folder = fileURLToPath(new URL("./fixtures", import.meta.url));

describe.each(readdirSync(folder))("%s", (ruleId) => {
  const names = readdirSync(`${folder}/${ruleId}`).filter((name) => name.endsWith(".sun"));
  test.each(names)("%s", (name) => {
    const own = readFileSync(`${folder}/${ruleId}/${name}`, "utf8").replace(/\/\/.*/g, "");
    const text = fixtureText(own);
    const assess = assessedInTurn();
    const before = assess(text);
    const found = thingsFound(before, ruleId);
    const unknown = notChecked(before, ruleId);
    const errors = textProblems(before);
    const lost: string[] = [];
    for (const { property, without } of found.size > 0 ? cuts(text) : []) {
      if (mends.has(`${ruleId} ${property}`)) continue;
      const after = assess(without);
      if (textProblems(after).some((problem) => !errors.includes(problem))) continue;
      const still = thingsFound(after, ruleId);
      const isUnknown = [...notChecked(after, ruleId)].some((check) => !unknown.has(check));
      for (const thing of found) if (!still.has(thing) && !isUnknown) lost.push(`${thing} without ${property}`);
    }
    expect(lost).toEqual([]);
  });
});

function thingsFound({ checks }: Assessment, ruleId: string): Set<string> {
  return new Set(
    checks
      .filter(({ rule, outcome }) => rule.id === ruleId && outcome.outcome === "finding")
      .map(({ thing }) => label(thing)),
  );
}

function notChecked({ checks }: Assessment, ruleId: string): Set<string> {
  const own = checks.filter(({ rule, outcome }) => rule.id === ruleId && outcome.outcome === "not-checked");
  return new Set(own.map(describeCheck));
}

/** A text with each of its properties taken out in turn. */
function* cuts(text: string): Generator<{ property: string; without: string }> {
  const written = /([\w-]+): ("[^"]*"|\[[^\]]*\]|[-\d.]+(\.\.[\d.]+)?( ?[%/\w]+)?|[\w-]+)/g;
  for (const { 0: whole, 1: property = "", index } of text.matchAll(written))
    yield { property, without: text.slice(0, index) + text.slice(index + whole.length) };
}
