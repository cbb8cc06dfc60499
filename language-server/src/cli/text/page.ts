import pc from "picocolors";

export type Paint = ReturnType<typeof pc.createColors>;

export interface PageOptions {
  readonly colors: boolean;
  /** Columns of the terminal; infinite where the output goes into a file or another program. */
  readonly width: number;
}

/** Collects lines of text for people. */
export class Page {
  readonly paint: Paint;
  private readonly lines: string[] = [];

  constructor(private readonly options: PageOptions) {
    this.paint = pc.createColors(options.colors);
  }

  /** One line as it is; an empty one without arguments, never two in a row. */
  line(text = ""): void {
    if (text === "" && (this.lines.length === 0 || this.lines.at(-1) === "")) return;
    this.lines.push(text);
  }

  /** Running text, wrapped at the width of the terminal, with every line indented. */
  text(indent: number, text: string, style: (text: string) => string = (plain) => plain): void {
    const blank = " ".repeat(indent);
    for (const line of wrapped(printable(text), this.options.width - indent)) this.lines.push(blank + style(line));
  }

  toString(): string {
    return `${this.lines.join("\n")}\n`;
  }
}

/** Breaks at blanks; a word that is longer than the width stays whole. */
export function wrapped(text: string, width: number): string[] {
  if (text.length <= width) return [text];
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines;
}

/** A design may come from anybody: what would move the cursor or recolour the terminal is shown, not obeyed. */
export function printable(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what this is about
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g, "\ufffd");
}

export function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? "" : "s"}`;
}
