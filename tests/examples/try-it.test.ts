import { describe, expect, it } from "vitest";
import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import { label } from "../../language-server/src/design/facts.js";
import { assessed, textOf } from "./examples.js";

/** The changes that the first example's page invites to, from its table: each must do what the page says. */

const design = "alder-cottage/alder-cottage.sun";
const row = /^\| `(?<write>[^`]+)` \| `(?<instead>[^`]+)` \| `(?<id>[^`]+)`(?: on `(?<item>[^`]+)`)?: /;

const rows = textOf("alder-cottage/README.md")
  .split("\n")
  .filter((line) => line.startsWith("| `"))
  .filter((line) => !line.includes(".sun`"));

function found({ checks, problems }: Assessment): string[] {
  const findings = checks.filter(({ outcome }) => outcome.outcome === "finding");
  return [
    ...findings.map(({ rule, thing }) => `${rule.id} on ${label(thing)}`),
    ...problems.map(({ id, severity }) => (severity === "error" ? id : `${id} (${severity})`)),
  ];
}

function escaped(word: string): string {
  return word.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&");
}

describe("what the page of Alder Cottage invites to try", () => {
  it("is a table of several changes", () => {
    expect(rows.length).toBeGreaterThan(4);
  });

  it.each(rows)("%s", (line) => {
    const { write, instead, id, item } = line.match(row)?.groups ?? {};
    const text = textOf(design);
    // The page writes one blank where the design sets values below each other.
    const written = new RegExp(instead!.split(" ").map(escaped).join(" +"));
    expect(text).toMatch(written);
    const after = found(assessed(design, text.replace(written, write!)));
    const said = item ? `${id} on ${item}` : id;
    expect(after).toContain(said);
    expect(found(assessed(design))).not.toContain(said);
  });
});
