import { join } from "node:path";
import { createContext, runInContext } from "node:vm";
import { build } from "esbuild";
import { extractText, getDocumentProxy, getMeta } from "unpdf";
import { beforeAll, describe, expect, test } from "vitest";
import { chartsOf } from "../../language-server/src/drawing/charts/charts.js";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { renderPdf } from "../../language-server/src/drawing/pdf/pdf.js";
import type { Picture } from "../../language-server/src/drawing/picture.js";
import { sheetsOf } from "../../language-server/src/drawing/sheets/sheets.js";
import { light } from "../../language-server/src/drawing/themes.js";
import { assessed, root } from "../examples/examples.js";
import { assessText } from "./drawn.js";
import { largeSite } from "./large-site.js";
import { texts } from "./texts.js";

const cottage = assessed("alder-cottage/alder-cottage.sun");
let sheets: Picture[] = [];
beforeAll(async () => {
  sheets = await sheetsOf(diagramOf(cottage));
});

async function pagesOf(bytes: Uint8Array): Promise<string[]> {
  const { text } = await extractText(bytes.slice(), { mergePages: false });
  return text.map((page) => page.replace(/\s+/g, " "));
}

describe("a PDF", () => {
  test("has a title and a language, and does not tell the time", async () => {
    const bytes = await renderPdf(sheets, light, "A3");
    const { info } = await getMeta(bytes.slice());
    expect(info).toMatchObject({ Title: "Single-line diagram of Alder Cottage", Language: "en-GB" });
    expect(info).not.toHaveProperty("CreationDate");
    expect(Buffer.from(bytes).toString("latin1")).toContain("/DisplayDocTitle true");
    expect(Buffer.from(await renderPdf(sheets, light, "A3")).equals(Buffer.from(bytes))).toBe(true);
  });

  test("holds every text of the picture as text", async () => {
    const [page = ""] = await pagesOf(await renderPdf(sheets, light, "A3"));
    // Where letters stand is the page's affair: without blanks, all that the picture says is there.
    const letters = page.replace(/ /g, "");
    const missing = texts(sheets[0]!.shapes).filter(({ words }) => !letters.includes(words.replace(/ /g, "")));
    expect(missing.map(({ words }) => words)).toEqual([]);
  });

  test("names in other alphabets are text too", async () => {
    const site = 'site "Łąka – Ελιά – Дом" {}\nstring S1 is 3 x P';
    const [page = ""] = await pagesOf(await renderPdf(await sheetsOf(diagramOf(assessText(site))), light, "A3"));
    expect(page).toContain("Łąka – Ελιά – Дом");
  });

  test("has a page for each sheet, and a list of them", async () => {
    const pictures = await sheetsOf(diagramOf(assessText(largeSite(120))));
    const bytes = await renderPdf(pictures, light, "A3");
    const pages = await pagesOf(bytes);
    expect(pages).toHaveLength(pictures.length);
    for (const [index, page] of pages.entries()) expect(page).toContain(`${index + 1} of ${pictures.length}`);
    const document = await getDocumentProxy(bytes.slice());
    const outline = await document.getOutline();
    expect(outline.map(({ title }) => title)).toEqual(pictures.map(({ title }) => title));
  });

  test("takes larger paper where a picture would be too small to read", async () => {
    const page = async (width: number): Promise<readonly number[]> => {
      const picture: Picture = { ...sheets[0]!, width, height: width / 2 };
      const document = await getDocumentProxy(await renderPdf([picture], light, "A3"));
      return (await document.getPage(1)).view.slice(2).map(Math.round);
    };
    // ISO 216, landscape, in points: 420 × 297 mm and 594 × 420 mm.
    expect(await page(2000)).toEqual([1191, 842]);
    expect(await page(2600)).toEqual([1684, 1191]);
  });

  test("every chart of the house", async () => {
    const pictures = chartsOf(cottage).map((chart) => chart.picture());
    const pages = await pagesOf(await renderPdf(pictures, light, "A4"));
    expect(pages.map((page, index) => page.includes(pictures[index]!.title))).toEqual(pictures.map(() => true));
  });
});

test("a web worker needs nothing of Node to make one", async () => {
  const { outputFiles } = await build({
    stdin: {
      contents: `export { renderPdf } from "./pdf.js";`,
      resolveDir: join(root, "language-server/src/drawing/pdf"),
    },
    bundle: true,
    write: false,
    platform: "browser",
    format: "iife",
    globalName: "made",
    target: "es2022",
    conditions: ["source"],
    loader: { ".woff": "binary" },
    // The library asks where it is itself for a colour profile that nothing here uses.
    define: { "import.meta.url": '"file:///"' },
    logLevel: "error",
  });
  // What workers have beside the language itself.
  const worker: Record<string, unknown> = {
    Blob,
    TextDecoder,
    TextEncoder,
    URL,
    atob,
    btoa,
    queueMicrotask,
    setTimeout,
  };
  worker.self = worker;
  const code = `${outputFiles[0]!.text};made.renderPdf(pictures, theme, "A3")`;
  const bytes: Uint8Array = await runInContext(code, createContext({ ...worker, pictures: sheets, theme: light }));
  const [page = ""] = await pagesOf(Uint8Array.from(bytes));
  expect(page).toContain("Alder Cottage");
});
