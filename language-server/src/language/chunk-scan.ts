import { continuationWords, declarationWords, isDigit, isNameStart, nameEnd } from "@sunwright/grammar";
import { begun, continued, type Head, isComplete, isDotted, type Token } from "./head.js";
import { isDeclarationWord, isLineBreak, isOnlySpace, isSpace, lineEnd, numberEnd } from "./scan-words.js";
import { stringEnd } from "./tokens.js";

/**
 * Finds where a chunk ends: the stretch of text that is parsed by itself, one top-level declaration as a rule.
 *
 * The result depends on nothing but the text from `start` up to `start + seen`. That is the whole contract of
 * incremental parsing: where that stretch is unchanged, so is the chunk.
 */
export interface ScannedChunk {
  /** Offset behind the chunk; the next one begins there. */
  readonly end: number;
  /** How far the scanner looked, relative to the chunk's start; infinite where the end of the file mattered. */
  readonly seen: number;
  /** Offset, relative to the chunk's start, of the bracket that is nested too deep to be read. */
  readonly deep?: number;
  /** Offset, relative to the chunk's start, of a brace that is never closed. */
  readonly unclosed?: number;
}

/** Deeper than any installation, and shallow enough for the parser's stack. */
export const deepest = 64;

/**
 * A brace counts as never closed once this many declarations have begun at the line start behind it. It bounds the
 * search: a half-typed block must not cost a walk through the whole file at every key.
 */
const patience = 200;

export function scanChunk(text: string, start: number): ScannedChunk {
  return new Scanner(text, start).scan();
}

class Scanner {
  private at: number;
  private head: Head = "start";
  private afterDot = false;
  private tokens = 0;
  private firstOnLine = true;
  private column0 = false;
  /** Where the doc comment before the coming token begins. */
  private docStart = -1;
  private far: number;
  private deep: number | undefined;

  constructor(
    private readonly text: string,
    private readonly start: number,
  ) {
    this.at = start;
    this.far = start;
  }

  scan(): ScannedChunk {
    const { text } = this;
    while (this.at < text.length) {
      const code = text.charCodeAt(this.at);
      if (code === 10 || code === 13) {
        this.firstOnLine = true;
        this.at++;
        this.column0 = true;
        continue;
      }
      const column0 = this.column0;
      this.column0 = false;
      if (isSpace(code)) {
        this.at++;
      } else if (code === 47 && text.charCodeAt(this.at + 1) === 47) {
        this.at = lineEnd(text, this.at);
      } else if (code === 47 && text.charCodeAt(this.at + 1) === 42) {
        if (this.skipComment()) return this.ended(text.length, true);
      } else {
        const end = this.token(code, column0);
        if (end) return end;
      }
    }
    return this.ended(text.length, true);
  }

  private ended(end: number, wholeFile: boolean, unclosed?: number): ScannedChunk {
    const seen = wholeFile ? Number.POSITIVE_INFINITY : Math.max(this.far, end) - this.start;
    return {
      end,
      seen,
      ...(this.deep === undefined ? {} : { deep: this.deep }),
      ...(unclosed === undefined ? {} : { unclosed: unclosed - this.start }),
    };
  }

  /** Skips a comment; true where it is never closed, so that it takes everything up to the end. */
  private skipComment(): boolean {
    const { text } = this;
    const end = text.indexOf("*/", this.at + 2);
    if (end < 0) return true;
    // `/**/` is no doc comment.
    if (text.charCodeAt(this.at + 2) === 42 && end > this.at + 2) this.docStart = this.at;
    this.at = end + 2;
    return false;
  }

  /** Takes one token; returns the chunk where the token belongs to the next one. */
  private token(code: number, column0: boolean): ScannedChunk | undefined {
    const { text, at } = this;
    let kind: Token;
    let end = at + 1;
    let word = "";
    if (isNameStart(code)) {
      kind = "word";
      end = nameEnd(text, at);
      word = text.slice(at, end);
    } else if (code === 34) {
      kind = "text";
      end = stringEnd(text, at);
    } else if (isDigit(code)) {
      kind = "number";
      end = numberEnd(text, at);
    } else if (code === 0xd7) {
      kind = "word";
      word = "×";
    } else {
      const mark = text[at]!;
      kind = mark === ":" || mark === "." || mark === "{" ? mark : "other";
    }

    if (this.tokens > 0 && this.firstOnLine && this.beginsNext(kind, word, end, column0)) {
      const boundary = this.docStart >= 0 ? this.docStart : at;
      this.far = Math.max(this.far, end + 2);
      return this.ended(boundary, false);
    }
    this.tokens++;
    this.firstOnLine = false;
    this.docStart = -1;
    this.at = end;
    if (kind === "{") {
      this.step(kind, word);
      return this.skipBody(at);
    }
    if (code === 125) this.head = "start";
    else if (!(kind === "other" && this.isLoose(code))) this.step(kind, word);
    return undefined;
  }

  /** Signs of a number or its unit: the lexer judges them, the head does not care. */
  private isLoose(code: number): boolean {
    return this.head === "run-unit" || code === 43 || code === 45 || code === 0x2212 /* − */;
  }

  private step(kind: Token, word: string): void {
    if (this.afterDot) {
      this.afterDot = false;
      if (kind !== "word") this.head = "error";
      return;
    }
    if (kind === "." && isDotted(this.head)) {
      this.afterDot = true;
      return;
    }
    this.head = continued(this.head, kind, word) ?? (isComplete(this.head) ? begun(kind, word) : "error");
  }

  private beginsNext(kind: Token, word: string, end: number, column0: boolean): boolean {
    const complete = isComplete(this.head) && !this.afterDot;
    if (complete) {
      if (kind === "." && isDotted(this.head)) return false;
      return continued(this.head, kind, word) === undefined;
    }
    // In the middle of a declaration: cut only where a new one plainly begins, so that a half-typed line costs itself.
    if (kind !== "word" || !column0) return false;
    return this.looksLikeHead(word, end) && (this.head === "error" || isDeclarationWord(word));
  }

  /** A word at the line start, then a name, a title or a brace on the same line. */
  private looksLikeHead(word: string, end: number): boolean {
    const { text } = this;
    let at = end;
    while (text.charCodeAt(at) === 32 || text.charCodeAt(at) === 9) at++;
    this.far = Math.max(this.far, end + 2, at + 1);
    if (continuationWords.has(word)) return false;
    const code = text.charCodeAt(at);
    if (word === "use") return code === 34;
    if (code === 34 || code === 123) return !declarationWords.has(word);
    if (!isNameStart(code)) return false;
    const second = nameEnd(text, at);
    this.far = Math.max(this.far, second + 2);
    return !continuationWords.has(text.slice(at, second));
  }

  /** Walks from an opening brace to its close; a brace that never closes ends the chunk at the next declaration. */
  private skipBody(open: number): ScannedChunk | undefined {
    const { text } = this;
    let depth = 1;
    let brackets = 0;
    let candidate = -1;
    let candidates = 0;
    let doc = -1;
    let at = open + 1;
    const opens = [open];
    while (at < text.length) {
      const code = text.charCodeAt(at);
      if (code === 123 || code === 91) {
        if (code === 123) opens[depth++ % opensKept] = at;
        else brackets++;
        if (depth + brackets > deepest) this.deep ??= at - this.start;
        at++;
      } else if (code === 125) {
        at++;
        brackets = 0;
        if (--depth === 0) {
          this.at = at;
          this.head = "start";
          return undefined;
        }
      } else if (code === 93) {
        if (brackets > 0) brackets--;
        at++;
      } else if (code === 34) {
        at = stringEnd(text, at);
      } else if (code === 47 && text.charCodeAt(at + 1) === 47) {
        at = lineEnd(text, at);
      } else if (code === 47 && text.charCodeAt(at + 1) === 42) {
        const begin = at;
        at = text.indexOf("*/", at + 2);
        if (at < 0) break;
        const isLineStart = isLineBreak(text.charCodeAt(begin - 1));
        doc = isLineStart && text.charCodeAt(begin + 2) === 42 && at > begin + 2 ? begin : -1;
        at += 2;
      } else if ((code === 10 || code === 13) && isNameStart(text.charCodeAt(at + 1))) {
        const end = nameEnd(text, at + 1);
        const word = text.slice(at + 1, end);
        if (isDeclarationWord(word) && this.looksLikeHead(word, end)) {
          if (candidate < 0) candidate = doc >= 0 && isOnlySpace(text, doc, at) ? doc : at + 1;
          if (++candidates > patience) {
            this.far = Math.max(this.far, end + 2);
            return this.ended(candidate, false, opens[(depth - 1) % opensKept]!);
          }
        }
        at = end;
      } else {
        at++;
      }
    }
    return this.ended(candidate < 0 ? text.length : candidate, true, opens[(depth - 1) % opensKept]!);
  }
}

/** Opening braces are remembered for the message only: a ring, so that no input makes it grow. */
const opensKept = 4096;
