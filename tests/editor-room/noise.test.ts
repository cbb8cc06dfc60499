import { describe, expect, test } from "vitest";
import { readSeverities } from "../../language-server/src/assessment/severities.js";
import { marksOf } from "../../language-server/src/editor/diagnostics.js";
import { lensesOf } from "../../language-server/src/editor/lenses/lenses.js";
import { cottage, files, plant, roof } from "./alder-cottage.js";
import { TestWorkspace, uriOf } from "./workspace.js";

const uri = uriOf("cottage.sun");

function marks(texts: Record<string, string>, severity: unknown = {}) {
  const { view } = new TestWorkspace(texts);
  const { severities } = readSeverities(severity);
  return marksOf(view, uri, { notChecked: "off", severities: () => severities });
}

describe("severity by rule", () => {
  const bad = { ...files, "cottage.sun": cottage.replace("8 x", "15 x") };
  const severityOf = (severity: unknown) => marks(bad, severity).find(({ id }) => id === "string-voltage")?.severity;

  test("is the rule's own, or what somebody chose", () => {
    expect(severityOf({})).toBe("error");
    expect(severityOf({ "string-voltage": "note" })).toBe("note");
  });

  test("off takes the mark away, and the line over the site counts it", () => {
    expect(severityOf({ "string-voltage": "off" })).toBeUndefined();
    const { view } = new TestWorkspace(bad);
    const { severities } = readSeverities({ "string-voltage": "off" });
    expect(lensesOf(view, uri, () => severities)[0]?.title).toContain("1 finding switched off by settings");
  });

  test("a departure stays, whatever its rule is switched to", () => {
    const departed = `${bad["cottage.sun"]}departure string-voltage on S1 because "x"\n`;
    const [mark] = marks({ ...bad, "cottage.sun": departed }, { "string-voltage": "off" }).filter(
      ({ id }) => id === "string-voltage",
    );
    expect(mark).toMatchObject({ severity: "note" });
  });
});

describe("one cause, one mark", () => {
  /** Four strings, each on its own inverter. */
  const many = `use "roof.sun"
use "plant.sun"
site "Long Row" { rules: gb  lowest-temperature: -10 degC  highest-temperature: 35 degC }
${["A", "B", "C", "D"]
  .map(
    (name, index) =>
      `string ${name} is ${6 + index} x Hollin430\ninverter I${name} is Brook4\nrun W${name} from ${name} to I${name}.pv1: 9 m of Solar4\n`,
  )
  .join("")}`;
  /** Ten times the voltage that the sheet prints: every string is then above every limit. */
  const wrongSheet = roof.replace("38.9 V", "389 V");

  const voltage = (texts: Record<string, string>) => marks(texts).filter(({ id }) => id === "string-voltage");

  test("a wrong sheet marks one string, and tells of the others with it", () => {
    const found = voltage({ "cottage.sun": many, "roof.sun": wrongSheet, "plant.sun": plant });
    expect(found).toHaveLength(1);
    const others = found[0]!.related.filter(({ message }) => message.startsWith("The same on"));
    expect(others.map(({ message }) => /^The same on (\w)/.exec(message)?.[1])).toEqual(["B", "C", "D"]);
    expect(many.slice(others[0]!.span.start, others[0]!.span.end)).toBe("7");
  });

  test("two strings that are both too long are two marks", () => {
    const text = cottage.replace("8 x", "15 x").replace("6 x", "16 x");
    expect(voltage({ ...files, "cottage.sun": text })).toHaveLength(2);
  });

  test("nothing is lost: every finding is a mark or told of with one", () => {
    const texts = { "cottage.sun": many, "roof.sun": wrongSheet, "plant.sun": plant };
    const { view } = new TestWorkspace(texts);
    const findings = view.notices(uri).filter(({ notice }) => notice.check?.outcome.outcome === "finding").length;
    const shown = marks(texts).filter(({ thing }) => thing !== undefined);
    const told = shown.flatMap(({ related }) => related.filter(({ message }) => message.startsWith("The same on")));
    expect(shown.length + told.length).toBe(findings);
  });
});
