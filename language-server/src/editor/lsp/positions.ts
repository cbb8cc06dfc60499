import { TextDocument } from "langium";
import type { Location, Position, Range, TextEdit } from "vscode-languageserver";
import { absolute, type Place } from "../../place.js";
import type { Change } from "../edits/change.js";
import type { Span } from "../navigate.js";
import type { Sources } from "../sources.js";

/**
 * Offsets of the files as they were read, as the editor's lines and columns and back. The editor's own copy of a text
 * may already be newer than what was computed.
 */
export class Positions {
  private readonly documents = new Map<string, TextDocument>();

  /** `spelled` gives an address as the editor itself writes it: it may escape other characters than we do. */
  constructor(
    private readonly sources: Sources,
    readonly spelled: (uri: string) => string,
    /** The editor's own copy of an open file. */
    private readonly open: (uri: string) => TextDocument | undefined = () => undefined,
  ) {}

  range({ uri, start, end }: Span): Range {
    const document = this.document(uri);
    return { start: document.positionAt(start), end: document.positionAt(end) };
  }

  location(span: Span): Location {
    return { uri: this.spelled(span.uri), range: this.range(span) };
  }

  /** Changes as the protocol has them, by file. */
  edits(changes: readonly Change[]): Record<string, TextEdit[]> {
    const edits: Record<string, TextEdit[]> = {};
    for (const change of changes) {
      const { uri, range } = this.location(change);
      edits[uri] ??= [];
      edits[uri].push({ range, newText: change.text });
    }
    return edits;
  }

  position(uri: string, offset: number): Position {
    return this.document(uri).positionAt(offset);
  }

  offset(uri: string, position: Position): number {
    return this.document(uri).offsetAt(position);
  }

  /** A link to a place, with line and column counted from one as editors take them. */
  link(place: Place): string {
    const { uri, start } = absolute(place);
    const { line, character } = this.document(uri).positionAt(start);
    return `${this.spelled(uri)}#L${line + 1},${character + 1}`;
  }

  private document(uri: string): TextDocument {
    const text = this.sources.text(uri) ?? "";
    // It knows its lines from one edit to the next; ours would count them all again.
    const open = this.open(uri);
    if (open?.getText() === text) return open;
    let document = this.documents.get(uri);
    if (document?.getText() !== text) {
      document = TextDocument.create(uri, "sunwright", 0, text);
      this.documents.set(uri, document);
    }
    return document;
  }
}
