import { describe, expect, test } from "vitest";
import { noSeverities, type Severities } from "../../language-server/src/assessment/severities.js";
import { statusPlaces } from "../../language-server/src/editor/status/places.js";
import { failedStatus, statusOf } from "../../language-server/src/editor/status/status.js";
import { supposed } from "../../language-server/src/editor/what-if/suppose.js";
import { cottage, files } from "./alder-cottage.js";
import { TestWorkspace, uriOf } from "./workspace.js";

const uri = uriOf("cottage.sun");
const usual = (): Severities => noSeverities;

function laid(text = cottage): TestWorkspace {
  return new TestWorkspace({ ...files, "cottage.sun": text });
}
function textOf(text: string, severities = usual): string | undefined {
  return statusOf(laid(text).view, uri, severities)[0]?.text;
}

describe("how a design stands, in a few words", () => {
  test("names the site, what was not checked, and what is closest to its limit", () => {
    const [status] = statusOf(laid().view, uri, usual);
    expect(status).toMatchObject({ entry: uri, name: "Alder Cottage", sort: "not-checked" });
    expect(status?.text).toMatch(/^Alder Cottage: nothing found, \d+ not checked, tightest \d+(\.\d+)? %$/);
    expect(status?.sentence).toMatch(/^Alder Cottage: \d+ not checked; tightest of what holds: [\w-]+ on \S+, /);
  });

  test("findings come before what was not checked, in number and in sort", () => {
    const text = cottage.replace("8 x Hollin430", "17 x Hollin430");
    const [status] = statusOf(laid(text).view, uri, usual);
    expect(status?.sort).toBe("findings");
    expect(status?.text).toMatch(/^Alder Cottage: \d+ findings?, \d+ not checked/);
  });

  test("a finding that is answered for is a departure, not nothing", () => {
    const long = cottage.replace("8 x Hollin430", "15 x Hollin430");
    const found = statusPlaces(laid(long).view, uri, { notChecked: "off" }).filter(({ sort }) => sort === "finding");
    expect(found.map(({ title }) => title)).toContain("string-voltage on S1");
    const text = `${long}${found.map(({ title }) => `departure ${title} because "on trial"\n`).join("")}`;
    const [status] = statusOf(laid(text).view, uri, usual);
    expect(status?.text).toMatch(/^Alder Cottage: \d departures?, \d+ not checked/);
    expect(status?.sentence).toMatch(/^Alder Cottage: \d departures?, /);
    const places = statusPlaces(laid(text).view, uri, { notChecked: "off" });
    expect(places.map(({ sort }) => sort)).not.toContain("finding");
    expect(places[0]).toMatchObject({ sort: "departure", title: "string-voltage on S1" });
    expect(places[0]?.detail).toMatch(/^Departed from: .* Reason given: on trial$/);
  });

  test("findings that the settings hide are still named", () => {
    const text = cottage.replace("8 x Hollin430", "17 x Hollin430");
    const off: Severities = new Map([["string-voltage", "off"]]);
    expect(textOf(text, () => off)).toMatch(/\d+ switched off/);
  });

  test("what is supposed is said", () => {
    const { view } = laid();
    const wanted = supposed(view, uri, "S1.count = 15");
    if (typeof wanted === "string") throw new Error(wanted);
    view.suppose(wanted.entries, wanted.overlay);
    expect(statusOf(view, uri, usual)[0]?.text).toMatch(/^Alder Cottage, what if: /);
  });

  test("a file of several designs has one each; a design without a site has its file's name", () => {
    const use = 'use "sheets.sun"\n';
    const workspace = new TestWorkspace({
      "sheets.sun": "part Elm is module { power: 400 W }\n",
      "one.sun": `${use}site "One" { rules: gb }\nstring S1 is 3 x Elm\n`,
      "two.sun": `${use}string S1 is 3 x Elm\n`,
    });
    const names = statusOf(workspace.view, uriOf("sheets.sun"), usual).map(({ name }) => name);
    expect(names).toEqual(["One", "two.sun"]);
  });

  test("an empty file and a file of sheets have nothing to say; one that cannot be computed says so", () => {
    const workspace = new TestWorkspace({ "empty.sun": "", "sheets.sun": "part Elm is module { power: 400 W }\n" });
    expect(statusOf(workspace.view, uriOf("empty.sun"), usual)).toEqual([]);
    expect(statusOf(workspace.view, uriOf("sheets.sun"), usual)).toEqual([]);
    expect(failedStatus(uri)).toMatchObject({
      sort: "findings",
      text: "cottage.sun: could not be computed, nothing checked",
    });
  });
});

describe("where to look", () => {
  test("findings first, the worst of them first, then what was not checked, then the margins, closest first", () => {
    const { view } = laid(cottage.replace("8 x Hollin430", "17 x Hollin430"));
    const places = statusPlaces(view, uri, { notChecked: "off" });
    const sorts = places.map(({ sort }) => sort);
    expect(sorts).toEqual([...sorts].sort((a, b) => order.indexOf(a) - order.indexOf(b)));
    expect(new Set(sorts)).toEqual(new Set(order));
    expect(places[0]).toMatchObject({ sort: "finding", severity: "error", note: "error" });
    const margins = places.filter(({ sort }) => sort === "margin").map(({ note }) => Number.parseFloat(note ?? ""));
    expect(margins).toEqual([...margins].sort((a, b) => b - a));
    expect(margins.every((margin) => margin <= 100)).toBe(true);
  });

  test("each place is in the text, at the thing that it names", () => {
    const workspace = laid();
    for (const { span, title } of statusPlaces(workspace.view, uri, { notChecked: "hint" })) {
      const text = workspace.text(span.uri)?.slice(span.start, span.end) ?? "";
      expect(text.length, title).toBeGreaterThan(0);
    }
  });
});

const order = ["finding", "not-checked", "margin"];
