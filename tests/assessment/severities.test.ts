import { describe, expect, test } from "vitest";
import { readSettingsText, readSeverities } from "../../language-server/src/assessment/severities.js";

function messages(given: unknown): string[] {
  return readSeverities(given).faults.map(({ message }) => message);
}

describe("severities that somebody chose", () => {
  test("are read by rule", () => {
    const { severities, faults } = readSeverities({ "string-voltage": "warning", "dc-voltage-drop": "off" });
    expect([...severities]).toEqual([
      ["string-voltage", "warning"],
      ["dc-voltage-drop", "off"],
    ]);
    expect(faults).toEqual([]);
  });

  test.each([undefined, null, {}])("%j chooses nothing", (given) => {
    expect(readSeverities(given)).toEqual({ severities: new Map(), faults: [] });
  });

  test("what means nothing is told of, and the rest counts", () => {
    const given = { "string-voltag": "off", "string-voltage": "loud", "dc-isolator": "note" };
    expect(messages(given)).toEqual([
      "There is no rule string-voltag. Did you mean string-voltage?",
      'string-voltage cannot be "loud". It is one of error, warning, note, off.',
    ]);
    expect([...readSeverities(given).severities]).toEqual([["dc-isolator", "note"]]);
    expect(messages(["off"])).toHaveLength(1);
    expect(messages("off")).toHaveLength(1);
  });

  test("a file that is no settings file says why", () => {
    expect(readSettingsText("{").faults[0]?.message).toMatch(/^This is no JSON: /);
    expect(readSettingsText("[]").faults).toHaveLength(1);
    expect(readSettingsText('{ "severities": {} }').faults[0]?.message).toBe(
      "There is no setting severities. There is severity.",
    );
    expect(readSettingsText('{ "severity": { "dc-isolator": "note" } }')).toEqual({
      severities: new Map([["dc-isolator", "note"]]),
      faults: [],
    });
  });
});
