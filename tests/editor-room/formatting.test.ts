import { describe, expect, test } from "vitest";
import { applied } from "../../language-server/src/editor/edits/change.js";
import { formatEdits, formatEditsBehind } from "../../language-server/src/editor/formatting.js";
import { TestWorkspace, uriOf, withCursor } from "./workspace.js";

const uri = uriOf("a.sun");

function edited(text: string, edits: readonly { start: number; end: number; text: string }[]): string {
  return applied(
    text,
    edits.map((edit) => ({ uri, ...edit })),
  );
}

describe("formatting in the editor", () => {
  test("of a stretch leaves what is outside it alone", () => {
    const text = "spd   A is P\nspd   B is P\nspd   C is P\n";
    const { view } = new TestWorkspace({ "a.sun": text });
    const start = text.indexOf("spd   B");
    expect(edited(text, formatEdits(view, uri, { start, end: start + 12 }))).toBe(
      "spd   A is P\nspd B is P\nspd   C is P\n",
    );
  });

  test.each([
    [
      "a closing brace formats its block, not its neighbours",
      "spd   A is P\nstring S1  is P {\ntilt:35 deg\n}<|>\nspd   B is P\n",
      "}",
      "spd   A is P\nstring S1 is P {\n    tilt: 35 deg\n}\nspd   B is P\n",
    ],
    [
      "a nested block's brace formats only that",
      "board  CU {\n    ac   X {a: 1 m}<|>\n}\n",
      "}",
      "board  CU {\n    ac X { a: 1 m }\n}\n",
    ],
    [
      "a new line formats the one just left",
      "string S1 is P {\n  tilt:35 deg\n  <|>\n}\n",
      "\n",
      "string S1 is P {\n    tilt: 35 deg\n  \n}\n",
    ],
    [
      "in a file with carriage returns too",
      "string S1 is P {\r\n  tilt:35 deg\r\n  <|>\r\n}\r\n",
      "\n",
      "string S1 is P {\r\n    tilt: 35 deg\r\n  \r\n}\r\n",
    ],
    [
      "in a line that cannot be read nothing is touched",
      "string  S1 is P {\n  tilt 35\n  <|>\n}\n",
      "\n",
      "string  S1 is P {\n  tilt 35\n  \n}\n",
    ],
  ])("%s", (_, marked, key, wanted) => {
    const { text, offset } = withCursor(marked);
    const { view } = new TestWorkspace({ "a.sun": text });
    expect(edited(text, formatEditsBehind(view, uri, offset, key))).toBe(wanted);
  });
});
