import { type GroupShape, type Picture, round, type Shape, type Stroke } from "./picture.js";
import { textWidth } from "./text-width.js";
import type { Theme } from "./themes.js";

/** The family that texts are measured in, and those that are as wide. */
const family = "Arimo, Arial, Helvetica, 'Liberation Sans', sans-serif";

/**
 * A picture as an SVG document: the same bytes for the same picture. Colours are attributes, so that no style sheet is
 * needed where a page's policy forbids one. Groups carry `data-id`, a class for their sort, and a title. Where several stand
 * in one page, each has a name of its own, by which it finds its title.
 */
export function svgOf(picture: Picture, theme: Theme, name = "sunwright"): string {
  const { width, height, title, description } = picture;
  const [w, h] = [round(width), round(height)];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}" role="img" aria-labelledby="${name}-title" aria-describedby="${name}-description" font-family="${family}">`,
    `<title id="${name}-title">${escaped(title)}</title>`,
    `<desc id="${name}-description">${escaped(description)}</desc>`,
    `<rect class="paper" width="${w}" height="${h}" fill="${theme.paper}"/>`,
    ...picture.shapes.map((shape) => element(shape, theme)),
    "</svg>",
    "",
  ].join("\n");
}

function element(shape: Shape, theme: Theme): string {
  switch (shape.is) {
    case "path":
      return `<path d="${shape.d}"${drawn(shape, theme)}/>`;
    case "rect": {
      const { x, y, w, h, radius } = shape;
      const corner = radius === undefined ? "" : ` rx="${round(radius)}"`;
      return `<rect x="${round(x)}" y="${round(y)}" width="${round(w)}" height="${round(h)}"${corner}${drawn(shape, theme)}/>`;
    }
    case "circle":
      return `<circle cx="${round(shape.x)}" cy="${round(shape.y)}" r="${round(shape.r)}"${drawn(shape, theme)}/>`;
    case "text": {
      const { x, y, text, size, bold = false, anchor = "start", fill = "ink" } = shape;
      if (text === "") return "";
      const weight = bold ? ' font-weight="700"' : "";
      const place = anchor === "start" ? "" : ` text-anchor="${anchor}"`;
      const length = round(textWidth(text, size, bold));
      return `<text x="${round(x)}" y="${round(y)}" font-size="${size}"${weight}${place} fill="${theme[fill]}" textLength="${length}" lengthAdjust="spacingAndGlyphs">${escaped(text)}</text>`;
    }
    case "group":
      return groupElement(shape, theme);
  }
}

function groupElement({ shapes, id, sort, label, x, y, state }: GroupShape, theme: Theme): string {
  const attributes = [
    id === undefined ? "" : ` data-id="${escaped(id)}"`,
    sort === undefined ? "" : ` class="${escaped(sort)}"`,
    ...Object.entries(state ?? {}).map(([name, value]) => (value === undefined ? "" : ` data-${name}="${value}"`)),
    label === undefined ? "" : ` role="img" aria-label="${escaped(label)}"`,
    x === undefined && y === undefined ? "" : ` transform="translate(${round(x ?? 0)} ${round(y ?? 0)})"`,
  ].join("");
  const title = label === undefined ? [] : [`<title>${escaped(label)}</title>`];
  const inner = [...title, ...shapes.map((shape) => element(shape, theme))].filter((each) => each !== "");
  return `<g${attributes}>${inner.join(id === undefined ? "" : "\n")}</g>`;
}

function drawn({ stroke, width = 1, dash, fill, opacity }: Stroke, theme: Theme): string {
  return [
    ` fill="${fill ? theme[fill] : "none"}"`,
    stroke ? ` stroke="${theme[stroke]}" stroke-width="${round(width)}"` : "",
    stroke && dash ? ` stroke-dasharray="${dash.map(round).join(" ")}"` : "",
    opacity === undefined ? "" : ` opacity="${round(opacity)}"`,
  ].join("");
}

/** Names and notes are anybody's text; what no XML may hold is left out. */
function escaped(words: string): string {
  let kept = "";
  for (const letter of words) if (isAllowed(letter.codePointAt(0)!)) kept += entities[letter] ?? letter;
  return kept;
}
const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** XML 1.0, production 2: no control characters, no halves of pairs. */
function isAllowed(code: number): boolean {
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return (code < 0xd800 || code > 0xdfff) && code !== 0xfffe && code !== 0xffff;
}
