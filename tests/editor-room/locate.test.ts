import { describe, expect, test } from "vitest";
import { locate } from "../../language-server/src/editor/locate.js";
import { TestWorkspace, uriOf, withCursor } from "./workspace.js";

function at(marked: string): string | undefined {
  const { text, offset } = withCursor(marked);
  const workspace = new TestWorkspace({ "a.sun": text });
  const located = locate(workspace.fragments(uriOf("a.sun")), offset);
  if (!located) return undefined;
  const { chunk, from, to } = located.place;
  const role = located.word.is === "mention" ? ` ${located.word.role} ${located.segment}` : "";
  return `${located.word.is}${role}: ${text.slice(chunk.start + from, chunk.start + to)}`;
}

describe("what stands at an offset", () => {
  test.each([
    ['use "ro<|>of.sun"', 'use: "roof.sun"'],
    ["spd F1\nstr<|>ing S1 is 2 x P", "kind: string"],
    ["spd F1\nstring S<|>1 is 2 x P", "name: S1"],
    ["string S1 is 2<|> x P", "count: 2"],
    ["string S1 is 2 x P<|>", "mention part 0: P"],
    ["part P<|> is module", "name: P"],
    ["part P is mod<|>ule", "kind: module"],
    ["run W1 from S1<|> to INV.pv1: 3 m of C", "mention from 0: S1"],
    ["run W1 from S1 to <|>INV.pv1: 3 m of C", "mention to 0: INV"],
    ["run W1 from S1 to INV.p<|>v1: 3 m of C", "mention to 1: pv1"],
    ["run W1 from S1 to INV.pv1: 3<|> m of C", "length: 3 m"],
    ["run W1 from S1 to INV.pv1: 3 m of C<|> {}", "mention cable 0: C"],
    ["string S1 is P { ti<|>lt: 3 deg }", "property: tilt"],
    ["string S1 is P { tilt: 3 d<|>eg }", "value: 3 deg"],
    ['departure string-vol<|>tage on S1 because "x"', "rule: string-voltage"],
    ['departure string-voltage on S<|>1 because "x"', "mention target 0: S1"],
    ["expect string-voltage on S<|>1", "mention target 0: S1"],
    ["measured S<|>1 { irradiance: 3 W/m2 }", "mention target 0: S1"],
    ["board B { way 1: breaker K1 is B16 serves L<|>1 }", "mention serves 0: L1"],
    ["isolator Q1 is P { arrangement: four<|>-poles }", "mention value 0: four-poles"],
  ])("%s", (marked, expected) => {
    expect(at(marked)).toBe(expected);
  });

  test("nothing between words, in a comment or behind the end", () => {
    expect(at("spd F1 // F<|>1")).toBeUndefined();
    expect(at("spd F1\n\n<|>\n")).toBeUndefined();
    expect(at("<|>")).toBeUndefined();
  });
});
