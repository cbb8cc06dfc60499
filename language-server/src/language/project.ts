import { type Disposable, Emitter, type FileSystemProvider } from "langium";
import type { Fragment } from "../design/model.js";
import type { ChunkParser } from "./chunk-parser.js";
import { type ReadFailure, readDesign } from "./files.js";
import { SourceFile } from "./source-file.js";
import { type KnownFiles, useProblem } from "./use-problems.js";
import { type Use, UseGraph, usesOf } from "./uses.js";

interface ProjectFile {
  readonly source: SourceFile;
  uses: readonly Use[];
  version: number;
  /** Fragments with the problems of `use` lines, and what they were made from. */
  shown: { readonly base: readonly Fragment[]; readonly structure: number; readonly fragments: readonly Fragment[] };
}

/**
 * The files that are known, as fragments, and who uses whom. Addresses are URIs as strings.
 *
 * It holds texts and their plain reading only; everything computed from them is somebody else's.
 */
export class Project implements KnownFiles {
  readonly graph = new UseGraph();
  private readonly files = new Map<string, ProjectFile>();
  private readonly failures = new Map<string, ReadFailure>();
  private readonly wanted = new Set<string>();
  private readonly changes = new Emitter<string>();
  /** Counts whatever may change a problem of a `use` line or the reach of a file. */
  private structure = 0;

  /** The parser is asked for when the first file comes. */
  constructor(private readonly parser: () => ChunkParser) {}

  /** Tells of each file whose text changed, or that came or went. */
  onChange(listener: (uri: string) => void): Disposable {
    return this.changes.event(listener);
  }

  /** Every file known. */
  uris(): Iterable<string> {
    return this.files.keys();
  }

  has(uri: string): boolean {
    return this.files.has(uri);
  }

  /** The text as it stands; undefined for a file that is not known. */
  text(uri: string): string | undefined {
    return this.files.get(uri)?.source.text;
  }

  /** Counts the texts a file has had; 0 for a file that is not known. */
  version(uri: string): number {
    return this.files.get(uri)?.version ?? 0;
  }

  /**
   * The file in pieces, in the order of its text, with the problems of its `use` lines. The same array as long as
   * nothing in it changed; fragments of unchanged text are the same objects.
   */
  fragments(uri: string): readonly Fragment[] {
    const file = this.files.get(uri);
    if (!file) return [];
    const base = file.source.fragments;
    const { shown, uses } = file;
    if (shown.base === base && shown.structure === this.structure) return shown.fragments;
    const problems = new Map<Fragment, Fragment>();
    for (const use of uses) {
      const problem = useProblem(uri, use, this);
      if (!problem) continue;
      const soFar = problems.get(use.fragment) ?? use.fragment;
      problems.set(use.fragment, { ...soFar, problems: [...soFar.problems, problem] });
    }
    let fragments = problems.size === 0 ? base : base.map((fragment) => problems.get(fragment) ?? fragment);
    if (shown.base === base && sameProblems(shown.fragments, fragments)) fragments = shown.fragments;
    file.shown = { base, structure: this.structure, fragments };
    return fragments;
  }

  /** The file itself and every known file it uses, directly or not, in the order of the `use` lines. */
  reach(uri: string): readonly string[] {
    return this.graph.reach(uri).filter((file) => this.files.has(file));
  }

  /** Known files with a `use` line for it. */
  usedBy(uri: string): readonly string[] {
    return this.graph.usedBy(uri).filter((file) => this.files.has(file));
  }

  /** Files that share a design with the given one: whatever uses it, directly or not, and all that those use. */
  related(uri: string): Set<string> {
    const related = new Set<string>();
    for (const user of this.graph.reachedBy(uri)) for (const file of this.graph.reach(user)) related.add(file);
    return related;
  }

  failure(uri: string): ReadFailure | undefined {
    return this.failures.get(uri);
  }

  /** Takes the text of a file; true where it is new. */
  update(uri: string, text: string): boolean {
    let file = this.files.get(uri);
    if (!file) {
      const source = new SourceFile(uri, this.parser());
      file = { source, uses: [], version: 0, shown: { base: [], structure: -1, fragments: [] } };
      this.files.set(uri, file);
      this.structure++;
    } else if (file.source.text === text) {
      return false;
    }
    file.source.update(text);
    file.version++;
    if (this.failures.delete(uri)) this.structure++;
    this.wanted.delete(uri);
    this.updateUses(uri, file);
    this.changes.fire(uri);
    return true;
  }

  /** Notes that a file cannot be read; it is then not known. */
  fail(uri: string, failure: ReadFailure): void {
    this.drop(uri);
    this.wanted.delete(uri);
    this.failures.set(uri, failure);
    this.structure++;
    this.changes.fire(uri);
  }

  /** Forgets a file. Who uses it still wants it. */
  remove(uri: string): void {
    this.drop(uri);
    this.failures.delete(uri);
    this.structure++;
    if (this.graph.usedBy(uri).length > 0) this.wanted.add(uri);
    this.changes.fire(uri);
  }

  /** Files that `use` lines name and nobody has tried to read yet. */
  wantedFiles(): string[] {
    return [...this.wanted];
  }

  /** Reads a file and all that it uses; false where the file itself cannot be read, `failure` then says why. */
  async load(uri: string, files: FileSystemProvider): Promise<boolean> {
    await this.read(uri, files);
    for (let wanted = this.wantedFiles(); wanted.length > 0; wanted = this.wantedFiles()) {
      await Promise.all(wanted.map((each) => this.read(each, files)));
    }
    return this.has(uri);
  }

  private async read(uri: string, files: FileSystemProvider): Promise<void> {
    const result = await readDesign(files, uri);
    if ("text" in result) this.update(uri, result.text);
    else this.fail(uri, result.failure);
  }

  private drop(uri: string): void {
    if (this.files.delete(uri)) this.graph.set(uri, []);
  }

  private updateUses(uri: string, file: ProjectFile): void {
    const before = this.graph.uses(uri);
    file.uses = usesOf(uri, file.source.fragments);
    const targets = [...new Set(file.uses.map((use) => use.target))];
    if (targets.length === before.length && targets.every((target, index) => target === before[index])) return;
    this.graph.set(uri, targets);
    this.structure++;
    for (const target of targets) {
      // A changed line is a new wish: a file that was missing may be there by now.
      if (!this.files.has(target)) this.wanted.add(target);
    }
    for (const target of before) if (this.graph.usedBy(target).length === 0) this.wanted.delete(target);
  }
}

function sameProblems(a: readonly Fragment[], b: readonly Fragment[]): boolean {
  return a.length === b.length && a.every((fragment, index) => sameMessages(fragment, b[index]!));
}

function sameMessages(a: Fragment, b: Fragment): boolean {
  if (a === b) return true;
  return (
    a.problems.length === b.problems.length &&
    a.problems.every(({ message }, index) => message === b.problems[index]!.message)
  );
}
