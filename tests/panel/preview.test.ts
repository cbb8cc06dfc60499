import { createRequire } from "node:module";
import { afterEach, describe, expect, test, vi } from "vitest";
import { type Block, type DrawnBlock, DrawnBlocks } from "../../extension/src/preview/blocks";
import { type Markdown, sunFences } from "../../extension/src/preview/fence";

/** The extension's own; a version that something else brings may lie above it. */
const library = createRequire(new URL("../../extension/package.json", import.meta.url))("markdown-it");
const MarkdownIt: new () => Markdown & { render(text: string, page?: object): string } = library.default ?? library;

const words = { drawing: "drawing …", text: "Text", unknown: (word: string) => `${word} means nothing` };
const nothing: DrawnBlock = { marks: [], problems: [], cautions: [], files: [] };

function page(text: string, find: (block: Block) => DrawnBlock | undefined, env: object = {}): string {
  return sunFences(new MarkdownIt(), find, words).render(text, env);
}
const fence = (info: string, text = "string S1 is 3 x P"): string => `\`\`\`${info}\n${text}\n\`\`\`\n`;

describe("a block of a design in a page", () => {
  test("shows its picture, its findings by number, and its text below", () => {
    const drawn = { ...nothing, svg: "<svg/>", marks: [{ number: 3, severity: "error", text: "a < b" }] };
    const html = page(fence("sun"), () => drawn);
    expect(html).toContain("<svg/>");
    expect(html).toContain('<li value="3"><strong>error</strong> a &lt; b</li>');
    expect(html).toMatch(/<details><summary>Text<\/summary><pre><code class="language-sun">string S1 is 3 x P/);
  });

  test("is asked for with its page and its chart", () => {
    const asked: Block[] = [];
    const find = (block: Block): undefined => void asked.push(block);
    page(fence("sun chart=margins"), find, { currentDocument: "file:///house/notes.md" });
    page(fence("sunwright"), find);
    expect(asked).toEqual([
      { text: "string S1 is 3 x P\n", page: "file:///house/notes.md", chart: "margins" },
      { text: "string S1 is 3 x P\n" },
    ]);
  });

  test("is its text while it is drawn, where nothing can be drawn, and with what is wrong below", () => {
    const plain = new MarkdownIt().render(fence("sun"));
    expect(page(fence("sun"), () => undefined)).toContain(`${plain}<p class="sunwright-waiting">drawing …</p>`);
    expect(page(fence("sun"), () => nothing)).toBe(plain);
    const html = page(fence("sun"), () => ({ ...nothing, problems: ["Line 1: <b>"] }));
    expect(html).toContain(`${plain}<p class="sunwright-problem">Line 1: &lt;b&gt;</p>`);
  });

  test("a word that means nothing is told", () => {
    expect(page(fence("sun big"), () => ({ ...nothing, svg: "<svg/>" }))).toContain("big means nothing");
  });

  test.each(["js", "sun code", "sunny", ""])("%s is left alone", (info) => {
    const find = vi.fn();
    expect(page(fence(info), find)).toBe(new MarkdownIt().render(fence(info)));
    expect(find).not.toHaveBeenCalled();
  });
});

describe("pictures that are remembered", () => {
  afterEach(() => {
    vi.useRealTimers();
  });

  /** A reader that makes its page again whenever it is told to, as the editor does. */
  function reading(texts: () => readonly string[], draw: (block: Block) => Promise<DrawnBlock>) {
    vi.useFakeTimers();
    let refreshes = 0;
    const shown = new Map<string, DrawnBlock | undefined>();
    const look = (): void => {
      for (const text of texts()) shown.set(text, blocks.find({ text }));
    };
    const blocks: DrawnBlocks = new DrawnBlocks(
      draw,
      () => {
        refreshes++;
        look();
      },
      String,
    );
    look();
    return { blocks, shown, look, refreshes: () => refreshes, settle: () => vi.advanceTimersByTimeAsync(5_000) };
  }
  const drawAll = vi.fn(async ({ text }: Block) => ({ ...nothing, svg: text, files: [`${text}.sun`] }));

  test("each is drawn once, and the page is made again once for all of them", async () => {
    drawAll.mockClear();
    const reader = reading(() => ["a", "b", "a"], drawAll);
    expect(reader.shown.get("a")).toBeUndefined();
    await reader.settle();
    expect(reader.shown.get("a")?.svg).toBe("a");
    expect([drawAll.mock.calls.length, reader.refreshes()]).toEqual([2, 1]);
  });

  test("a page of more blocks than are remembered comes to rest", async () => {
    drawAll.mockClear();
    const texts = Array.from({ length: 300 }, (_, index) => `block ${index}`);
    const reader = reading(() => texts, drawAll);
    await reader.settle();
    expect([...reader.shown.values()].every((drawn) => drawn?.svg)).toBe(true);
    expect([drawAll.mock.calls.length, reader.refreshes()]).toEqual([300, 1]);
  });

  test("what no page shows any more is let go of", async () => {
    let version = 0;
    const reader = reading(() => [`version ${version}`], drawAll);
    for (; version < 400; version++) {
      reader.look();
      await vi.advanceTimersByTimeAsync(200);
    }
    expect(reader.blocks.size).toBeLessThanOrEqual(101);
  });

  test("what cannot be drawn says so, and is not tried again and again", async () => {
    const fails = vi.fn(() => Promise.reject(new Error("the server is gone")));
    const reader = reading(() => ["a"], fails);
    await reader.settle();
    expect(reader.shown.get("a")?.problems).toEqual(["Error: the server is gone"]);
    expect([fails.mock.calls.length, reader.refreshes()]).toEqual([1, 1]);
  });

  test("a file that is used changes: the page is made again only where the picture is another", async () => {
    let svg = "one";
    const reader = reading(
      () => ["a"],
      async () => ({ ...nothing, svg, files: ["roof.sun"] }),
    );
    await reader.settle();
    reader.blocks.changed(["roof.sun", "other.sun"]);
    await reader.settle();
    expect(reader.refreshes()).toBe(1);
    svg = "two";
    reader.blocks.changed(["other.sun"]);
    await reader.settle();
    expect(reader.shown.get("a")?.svg).toBe("one");
    reader.blocks.changed(["roof.sun"]);
    await reader.settle();
    expect([reader.shown.get("a")?.svg, reader.refreshes()]).toEqual(["two", 2]);
  });
});
