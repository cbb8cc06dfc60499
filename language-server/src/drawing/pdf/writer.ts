import type PDFDocument from "pdfkit";
import type { Paint, Shape, Stroke, TextShape } from "../picture.js";
import type { Theme } from "../themes.js";
import { faces, plainly } from "./faces.js";

type Document = InstanceType<typeof PDFDocument>;

interface LoadedFace {
  readonly name: string;
  readonly has: (code: number) => boolean;
}

/** Writes shapes onto the page that is open. */
export class Writer {
  private readonly loaded = new Map<boolean, LoadedFace[]>();

  constructor(
    private readonly document: Document,
    private readonly theme: Theme,
  ) {}

  draw(shape: Shape): void {
    const { document } = this;
    switch (shape.is) {
      case "path":
        document.path(shape.d);
        this.paint(shape);
        return;
      case "rect":
        if (shape.radius) document.roundedRect(shape.x, shape.y, shape.w, shape.h, shape.radius);
        else document.rect(shape.x, shape.y, shape.w, shape.h);
        this.paint(shape);
        return;
      case "circle":
        document.circle(shape.x, shape.y, shape.r);
        this.paint(shape);
        return;
      case "text":
        this.write(shape);
        return;
      case "group":
        document.save().translate(shape.x ?? 0, shape.y ?? 0);
        for (const inner of shape.shapes) this.draw(inner);
        document.restore();
    }
  }

  private paint({ stroke, width = 1, dash, fill, opacity = 1 }: Stroke): void {
    const { document } = this;
    document.save().opacity(opacity);
    if (stroke) {
      document.lineWidth(width);
      if (dash) document.dash(dash[0] ?? 1, { space: dash[1] ?? 1 });
      // The library's own call takes one dash and one gap; a pattern is written as the format has it.
      if (dash && dash.length > 2) document.addContent(`[${dash.join(" ")}] 0 d`);
    }
    if (fill && stroke) document.fillAndStroke(this.color(fill), this.color(stroke));
    else if (fill) document.fill(this.color(fill));
    else if (stroke) document.stroke(this.color(stroke));
    document.restore();
  }

  private write({ x, y, text, size, bold = false, anchor = "start", fill = "ink" }: TextShape): void {
    const { document } = this;
    const pieces = this.pieces(text, bold).map(({ face, words }) => {
      document.font(face).fontSize(size);
      return { face, words, width: document.widthOfString(words) };
    });
    const whole = pieces.reduce((sum, { width }) => sum + width, 0);
    let at = anchor === "start" ? x : anchor === "end" ? x - whole : x - whole / 2;
    document.fillColor(this.color(fill));
    for (const { face, words, width } of pieces) {
      document.font(face).fontSize(size).text(words, at, y, { lineBreak: false, baseline: "alphabetic" });
      at += width;
    }
  }

  /** Stretches of text that one face has all letters of. */
  private pieces(words: string, isBold: boolean): { readonly face: string; readonly words: string }[] {
    const all = this.faces(isBold);
    const found: { face: string; words: string }[] = [];
    for (const letter of words) {
      const code = letter.codePointAt(0)!;
      const face = all.find((each) => each.has(code));
      const own = face ? letter : (plainly[letter] ?? "?");
      const name = (face ?? all[0]!).name;
      const last = found[found.length - 1];
      if (last?.face === name) last.words += own;
      else found.push({ face: name, words: own });
    }
    return found;
  }

  private faces(isBold: boolean): LoadedFace[] {
    let loaded = this.loaded.get(isBold);
    if (!loaded) {
      loaded = faces(isBold).map(({ name, bytes }) => {
        this.document.registerFont(name, bytes);
        this.document.font(name);
        const { font } = (this.document as unknown as { _font: { font: Coverage } })._font;
        return { name, has: (code: number) => font.hasGlyphForCodePoint(code) };
      });
      this.loaded.set(isBold, loaded);
    }
    return loaded;
  }

  private color(paint: Paint): string {
    return this.theme[paint];
  }
}

interface Coverage {
  hasGlyphForCodePoint(code: number): boolean;
}
