import { describe, expect, it } from "vitest";
import { compared, figureReport, workings } from "../../language-server/src/cli/report/figures.js";
import { Locator } from "../../language-server/src/cli/report/locate.js";
import { notices } from "../../language-server/src/cli/report/notices.js";
import type { FileReport, ProblemReport } from "../../language-server/src/cli/report/report.js";
import { printable, wrapped } from "../../language-server/src/cli/text/page.js";
import { derive, stated } from "../../language-server/src/physics/make.js";

describe("a figure of the report", () => {
  it("is a number in the unit that it is printed in", () => {
    const figure = stated("Tmin", 263.15, "temperature", "degC", "site, lowest-temperature");
    expect(figureReport(figure)).toEqual({ symbol: "Tmin", value: -10, unit: "degC", text: "−10 °C" });
  });

  it("has no number where there is no finite one, and no digits that conversion made up", () => {
    const odd = derive("x", Number.POSITIVE_INFINITY, "voltage", "V", "a / 0", []);
    expect(figureReport(odd)).toMatchObject({ value: null, text: "∞ V" });
    expect(figureReport(stated("Δu", 0.1 * 0.07, "ratio", "%", "")).value).toBe(0.7);
  });

  it("is told in the unit of the limit that it is compared with, with enough digits to tell them apart", () => {
    const value = derive("U", 600.04, "voltage", undefined, "a", []);
    const limit = stated("Umax", 600, "voltage", "V", "INV, max-dc-voltage");
    const { value: told, limit: bound } = compared(value, limit);
    expect([told?.text, bound?.text]).toEqual(["600.04 V", "600 V"]);
    expect(compared(value).limit).toBeUndefined();
    expect(compared(undefined, limit).limit?.value).toBe(600);
  });

  it("has its sum, with each line once though value and limit share some", () => {
    const stringPower = derive("P", 4000, "power", "W", "n · Pmax", []);
    const value = derive("Pdc", 8000, "power", "W", "2 · P", [stringPower]);
    const limit = derive("Plimit", 9000, "power", "W", "2.25 · P", [stringPower]);
    expect(workings(value, limit).filter((line) => line.startsWith("P ="))).toHaveLength(1);
    expect(workings()).toEqual([]);
  });
});

it("finds line and column at the ends of lines and of the file", () => {
  const text = "ab\r\ncd\re\n";
  const locator = new Locator({ text: () => text, name: () => "x.sun" });
  const at = (from: number, to: number) => {
    const { line, column, endLine, endColumn } = locator.locate({ chunk: { uri: "x", start: 1 }, from, to });
    return [line, column, endLine, endColumn];
  };
  expect(at(-1, 0)).toEqual([1, 1, 1, 2]);
  expect(at(1, 3)).toEqual([1, 3, 2, 1]);
  expect(at(6, 7)).toEqual([3, 1, 3, 2]);
  expect(at(8, 8)).toEqual([4, 1, 4, 1]);
});

it("tells a notice once that several designs share, in the order of the text", () => {
  const problem = (line: number, message: string): ProblemReport => ({
    id: "unknown-word",
    severity: "error",
    message,
    location: { file: "a.sun", line, column: 1, endLine: line, endColumn: 2 },
    related: [],
    expected: false,
  });
  const file = (...problems: ProblemReport[]): FileReport => ({ kind: "text", file: "a.sun", problems });
  const told = notices([file(problem(7, "late"), problem(2, "early")), file(problem(7, "late"), problem(7, "other"))]);
  expect(told.map(({ message }) => message)).toEqual(["early", "late", "other"]);
});

it("wraps at blanks and leaves long words whole", () => {
  expect(wrapped("one two three", 7)).toEqual(["one two", "three"]);
  expect(wrapped("string-voltage on S1", 6)).toEqual(["string-voltage", "on S1"]);
  expect(wrapped("", 10)).toEqual([""]);
});

it("shows control characters and changes of direction instead of obeying them", () => {
  expect(printable("a\u001b[31mb\u0007\u009bc\u202ed\n")).toBe("a�[31mb��c�d�");
  expect(printable("−10 °C · Σ I, naïve 日本")).toBe("−10 °C · Σ I, naïve 日本");
});
