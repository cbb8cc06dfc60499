import { absolute, type Place } from "../../place.js";
import type { Location } from "./report.js";

/** What has to be known of the files to say where something stands. */
export interface Texts {
  text(uri: string): string;
  /** The path that people know the file by. */
  name(uri: string): string;
}

/** Turns places into lines and columns. The lines of a file are counted once, when first asked for. */
export class Locator {
  private readonly starts = new Map<string, readonly number[]>();
  private readonly names = new Map<string, string>();

  constructor(private readonly texts: Texts) {}

  name(uri: string): string {
    let name = this.names.get(uri);
    if (name === undefined) {
      name = this.texts.name(uri);
      this.names.set(uri, name);
    }
    return name;
  }

  locate(place: Place): Location {
    const { uri, start, end } = absolute(place);
    const starts = this.lineStarts(uri);
    const [line, column] = position(starts, start);
    const [endLine, endColumn] = position(starts, Math.max(start, end));
    return { file: this.name(uri), line, column, endLine, endColumn };
  }

  private lineStarts(uri: string): readonly number[] {
    let starts = this.starts.get(uri);
    if (!starts) {
      starts = lineStarts(this.texts.text(uri));
      this.starts.set(uri, starts);
    }
    return starts;
  }
}

/** Offsets at which lines begin; a line ends with LF, CR LF or CR. */
function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 13 && text.charCodeAt(at + 1) === 10) at++;
    if (code === 10 || code === 13) starts.push(at + 1);
  }
  return starts;
}

function position(starts: readonly number[], offset: number): [line: number, column: number] {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle]! <= offset) low = middle;
    else high = middle - 1;
  }
  return [low + 1, offset - starts[low]! + 1];
}
