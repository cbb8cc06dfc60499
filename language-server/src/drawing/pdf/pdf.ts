import PDFDocument from "pdfkit";
import { type Picture, round } from "../picture.js";
import { type Paper, paperFor, papers, scaleOn } from "../sheets/paper.js";
import type { Theme } from "../themes.js";
import { Writer } from "./writer.js";

const point = 25.4 / 72;

/**
 * Pictures as a PDF, each on a page as large as its letters need, from `smallest` on. The same bytes for the same
 * pictures: nothing in it tells the time. Needs nothing of Node: it runs in a web worker as it is.
 */
export async function renderPdf(pictures: readonly Picture[], theme: Theme, smallest: Paper): Promise<Uint8Array> {
  const [first] = pictures;
  const title = first?.title.replace(/, sheet 1 of \d+$/, "") ?? "";
  const document = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    info: { Title: title, Subject: first?.description ?? "", CreationDate: new Date(0) },
    // Without a face to start with, none is read from the library's own folder.
    font: null as unknown as string,
    lang: "en-GB",
    displayTitle: true,
    pdfVersion: "1.7",
  });
  // The library dates what it writes, here and in a second copy of the same facts; neither is wanted.
  delete (document.info as Record<string, unknown>).CreationDate;
  Object.assign(document, { endMetadata: () => {} });
  const chunks: Uint8Array<ArrayBuffer>[] = [];
  document.on("data", (chunk: Uint8Array<ArrayBuffer>) => chunks.push(chunk));
  const ended = new Promise((resolve) => document.on("end", resolve));

  const writer = new Writer(document, theme);
  for (const picture of pictures) {
    const paper = paperFor(picture, smallest);
    const [width, height] = [papers[paper].width, papers[paper].height].map((side) => round(side / point)) as [
      number,
      number,
    ];
    document.addPage({ size: [width, height], margin: 0 });
    if (pictures.length > 1) document.outline.addItem(picture.title);
    const scale = (scaleOn(paper, picture) * 72) / 96;
    document.translate((width - picture.width * scale) / 2, (height - picture.height * scale) / 2).scale(scale);
    for (const shape of picture.shapes) writer.draw(shape);
  }
  document.end();
  await ended;
  return new Uint8Array(await new Blob(chunks).arrayBuffer());
}
