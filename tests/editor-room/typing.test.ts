import { describe, expect, test } from "vitest";
import { goodDesigns } from "../examples/examples.js";
import { filesOf, type Seen, seenIn } from "./example-files.js";
import { TestWorkspace } from "./workspace.js";

/**
 * What a reader may see while a line is typed, one character after the other, into a design that had the line before:
 *
 * - on other lines nothing but what the whole text shows, or what the text without the line shows;
 * - on its own line what is wrong with the words so far, and no finding that the whole line does not have.
 *
 * Some things are as they must be: a brace that is not closed yet is marked where it opens; a run that ends at the
 * beginning of a longer name (`to CU` before `.K9` is written), and an inverter without its part, are whole sentences,
 * and judged as what they say; and a name that passes through another one's (`board NE` on the way to `NEW`) is taken for a moment.
 */
const isSentence = /^(?:run \S+ from \S+ to \S+|inverter \S+(?: is?)? *)$/;

/** Every so many lines, so that all sorts of lines have their turn and a run takes seconds. */
const stride = 11;

const key = ({ id, line, at }: Seen): string => `${id} on line ${line + 1}, ${at}`;

function flickers(design: string, files: Record<string, string>, index: number): string[] {
  const lines = files[design]!.split("\n");
  const line = lines[index]!;
  const workspace = new TestWorkspace(files);
  const seen = (): Seen[] => seenIn(workspace, design);
  const put = (text: string): void =>
    workspace.write(design, [...lines.slice(0, index), text, ...lines.slice(index + 1)].join("\n"));
  const expected = new Set(seen().map(key));
  put("");
  for (const mark of seen()) expected.add(key(mark));
  const found: string[] = [];
  for (let length = 1; length < line.length; length++) {
    const typed = line.slice(0, length);
    put(typed);
    const marks = seen();
    if (isSentence.test(typed) || marks.some(({ id }) => id === "duplicate-name")) continue;
    for (const mark of marks) {
      if (expected.has(key(mark))) continue;
      const isOwn = mark.line === index && !mark.isFinding;
      const isOpenBrace = mark.id === "syntax" && mark.at === "{";
      if (!isOwn && !isOpenBrace) found.push(`«${typed}» shows ${key(mark)}: ${mark.message}`);
    }
  }
  return found;
}

describe("a line that is being typed disturbs no other", () => {
  test.each(goodDesigns)("%s", (design) => {
    const files = filesOf(design);
    const lines = files[design]!.split("\n");
    const found: string[] = [];
    let count = 0;
    for (let index = 1; index < lines.length; index += stride) {
      if (/^\s*(?:\/\/|\/?\*|\}?$)/.test(lines[index]!)) continue;
      count++;
      found.push(...flickers(design, files, index));
    }
    expect(count).toBeGreaterThan(4);
    expect(found).toEqual([]);
  });
});
