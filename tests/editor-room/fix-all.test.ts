import { describe, expect, test } from "vitest";
import { applied } from "../../language-server/src/editor/edits/change.js";
import { safeChanges } from "../../language-server/src/editor/fix-all.js";
import { cottage, files } from "./alder-cottage.js";
import { TestWorkspace, uriOf } from "./workspace.js";

function corrected(text: string, others: Record<string, string> = {}): string {
  const { view } = new TestWorkspace({ ...others, "a.sun": text });
  return applied(text, safeChanges(view, uriOf("a.sun")));
}

describe("all safe corrections at once", () => {
  test.each([
    ["a comma for the point", "run W from A to B: 1,5 m of C\n", "run W from A to B: 1.5 m of C\n"],
    ["a unit in other letters", "supply G { voltage: 230 v }\n", "supply G { voltage: 230 V }\n"],
    [
      "several in one file",
      "supply G { voltage: 230,5 V }\nrun W from A to B: 3,5 m of C\n",
      "supply G { voltage: 230.5 V }\nrun W from A to B: 3.5 m of C\n",
    ],
  ])("%s", (_, text, wanted) => {
    expect(corrected(text)).toBe(wanted);
  });

  test.each([
    ["a comma that may part thousands", "run W from A to B: 1,200 m of C\n"],
    ["a name that is only like another", cottage.replace("from S1 to", "from S11 to")],
    ["a property that is only like another", 'site "X" { lowest-temprature: -10 degC }\n'],
    ["a finding: what mends it is a choice", cottage.replace("8 x", "15 x")],
    ["anything in a text without fault", cottage],
  ])("never %s", (_, text) => {
    expect(corrected(text, files)).toBe(text);
  });
});
