import { assess } from "../assessment/assess.js";
import type { Assessment, Notice } from "../assessment/assessment.js";
import { notices } from "../assessment/notices.js";
import { assessWhatIf, WhatIfMemory } from "../assessment/what-if.js";
import type { SourceFile } from "../design/design.js";
import type { Fragment } from "../design/model.js";
import type { Overlay } from "../design/what-if/overlay.js";
import { absolute, type Place } from "../place.js";
import { fragmentAt } from "./fragment-at.js";
import type { Sources } from "./sources.js";
import { SteadyFragments } from "./steady.js";

/** A notice with the assessment that found it: its fixes are worked out from there. */
export interface PlacedNotice {
  readonly notice: Notice;
  readonly assessment: Assessment;
}

interface Kept {
  readonly files: readonly SourceFile[];
  readonly overlay: Overlay | undefined;
  readonly memory: WhatIfMemory;
  readonly assessment: Assessment;
}

/**
 * The designs that a workspace holds, each computed at most once a version.
 *
 * A file may belong to several designs: a parts file to every site that uses it. Its notices are those of all of them.
 */
export class WorkspaceView {
  private readonly kept = new Map<string, Kept>();
  private readonly overlays = new Map<string, Overlay>();
  private readonly steady = new SteadyFragments();
  private readonly byFile = new WeakMap<Assessment, Map<string, Notice[]>>();

  constructor(readonly sources: Sources) {}

  /**
   * The files a file is judged from: those that reach it and have a site or are used by nobody; itself where none is
   * (files that only use each other).
   */
  entries(uri: string): string[] {
    const entries: string[] = [];
    const seen = new Set([uri]);
    const queue = [uri];
    for (let file = queue.shift(); file !== undefined; file = queue.shift()) {
      const users = this.sources.usedBy(file);
      if (users.length === 0 || this.hasSite(file)) entries.push(file);
      for (const user of users) {
        if (seen.has(user)) continue;
        seen.add(user);
        queue.push(user);
      }
    }
    return entries.length > 0 ? entries : [uri];
  }

  /** Everything computed about the design that begins in a file, with what is supposed of it. */
  assessment(entry: string): Assessment {
    const files = this.filesOf(entry);
    const overlay = this.overlays.get(entry);
    const kept = this.kept.get(entry);
    if (kept && kept.overlay === overlay && sameFiles(kept.files, files)) return kept.assessment;
    const memory = kept?.memory ?? new WhatIfMemory();
    const assessment = overlay ? assessWhatIf(files, overlay, memory) : assess(files, memory.asWritten);
    this.kept.set(entry, { files, overlay, memory, assessment });
    return assessment;
  }

  /** What the design that begins in a file is read from. */
  filesOf(entry: string): SourceFile[] {
    return this.sources.reach(entry).map((uri) => this.file(uri));
  }

  /** Supposes something of the designs that begin in some files, and of no others. */
  suppose(entries: readonly string[], overlay: Overlay | undefined): void {
    this.overlays.clear();
    if (overlay) for (const entry of entries) this.overlays.set(entry, overlay);
  }

  /** The assessments of all designs a file belongs to. */
  assessments(uri: string): Assessment[] {
    return this.entries(uri).map((entry) => this.assessment(entry));
  }

  /** What there is to show in a file, each thing once, in the order of its text. */
  notices(uri: string): PlacedNotice[] {
    const placed: PlacedNotice[] = [];
    for (const assessment of this.assessments(uri)) {
      for (const notice of this.noticesByFile(assessment).get(uri) ?? [])
        if (this.isShown(notice)) placed.push({ notice, assessment });
    }
    placed.sort((a, b) => byText(a.notice.place, b.notice.place));
    return withoutRepeats(placed);
  }

  /**
   * Files whose notices an edit of some files may change: everything that shares a design with them. Files that the
   * workspace does not know are left out.
   */
  concerned(changed: Iterable<string>): Set<string> {
    const concerned = new Set<string>();
    for (const uri of changed) {
      concerned.add(uri);
      for (const entry of this.entries(uri)) for (const reached of this.sources.reach(entry)) concerned.add(reached);
    }
    return concerned;
  }

  /** The piece of text a place belongs to, if that piece is still part of its file. */
  fragmentOf(place: Place): Fragment | undefined {
    const found = fragmentAt(this.sources.fragments(place.chunk.uri), place.chunk.start);
    return found?.chunk === place.chunk ? found : undefined;
  }

  /** Whether a place still stands in the text as it is now, so that an edit or a link may go there. */
  isLive(place: Place): boolean {
    return this.fragmentOf(place) !== undefined;
  }

  /** Lets go of what was computed for a file that is gone. */
  forget(uri: string): void {
    this.kept.delete(uri);
    this.overlays.delete(uri);
    this.steady.forget(uri);
  }

  private file(uri: string): SourceFile {
    return { uri, fragments: this.steady.of(uri, this.sources.fragments(uri)) };
  }

  /** While a piece of text is half typed, only what is wrong with its text is shown; guesses about the rest are not. */
  private isShown(notice: Notice): boolean {
    const fragment = this.fragmentOf(notice.place);
    if (!fragment) return false;
    return !fragment.broken || (notice.problem !== undefined && fragment.problems.includes(notice.problem));
  }

  private hasSite(uri: string): boolean {
    return this.sources
      .fragments(uri)
      .some(({ declarations }) => declarations.some((one) => one.declares === "item" && one.kind === "site"));
  }

  private noticesByFile(assessment: Assessment): Map<string, Notice[]> {
    let byFile = this.byFile.get(assessment);
    if (!byFile) {
      byFile = new Map();
      for (const notice of notices(assessment)) {
        const { uri } = notice.place.chunk;
        const list = byFile.get(uri);
        if (list) list.push(notice);
        else byFile.set(uri, [notice]);
      }
      this.byFile.set(assessment, byFile);
    }
    return byFile;
  }
}

function sameFiles(a: readonly SourceFile[], b: readonly SourceFile[]): boolean {
  return (
    a.length === b.length &&
    a.every((file, index) => file.uri === b[index]?.uri && file.fragments === b[index]?.fragments)
  );
}

function byText(a: Place, b: Place): number {
  return a.chunk.start + a.from - (b.chunk.start + b.from) || a.to - a.from - (b.to - b.from);
}

function withoutRepeats(placed: readonly PlacedNotice[]): PlacedNotice[] {
  const seen = new Set<string>();
  return placed.filter(({ notice }) => {
    const { start, end } = absolute(notice.place);
    const key = `${start} ${end} ${notice.id} ${notice.message}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
