/** A block of a page: its text, and what its first line asks for. */
export interface Block {
  readonly text: string;
  /** The page it stands in; undefined where the page is in no file. */
  readonly page?: string;
  /** A chart in place of the diagram. */
  readonly chart?: string;
}

/** What a block gives. */
export interface DrawnBlock {
  /** SVG document; undefined where there is nothing to draw. */
  readonly svg?: string;
  /** Findings by the numbers in the picture. */
  readonly marks: readonly { readonly number: number; readonly severity: string; readonly text: string }[];
  readonly problems: readonly string[];
  readonly cautions: readonly string[];
  /** Files that it is made of besides its own text. */
  readonly files: readonly string[];
}

interface Kept {
  readonly block: Block;
  drawn: DrawnBlock | undefined;
  /** When it was last looked at, counted in refreshes. */
  used: number;
}

const most = 100;
const patience = 60;

/**
 * Pictures of blocks, remembered by what they are made of. A page is made in one go and cannot wait: what is not there
 * yet is asked for, and the page is made again when it has come.
 */
export class DrawnBlocks {
  private readonly kept = new Map<string, Kept>();
  private refreshes = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    /** Its name is one that no other block of a page has. */
    private readonly draw: (block: Block, name: string) => Promise<DrawnBlock>,
    private readonly refresh: () => void,
    private readonly whyNot: (error: unknown) => string,
  ) {}

  get size(): number {
    return this.kept.size;
  }

  /** The picture of a block; undefined while it is being drawn. */
  find(block: Block): DrawnBlock | undefined {
    const key = JSON.stringify([block.page, block.chart, block.text]);
    let kept = this.kept.get(key);
    if (!kept) {
      kept = { block, drawn: undefined, used: this.refreshes };
      this.kept.set(key, kept);
      this.letGo();
      void this.ask(kept);
    }
    kept.used = this.refreshes;
    return kept.drawn;
  }

  /** Draws again what is made of some files; the pages are made again only where something has become another. */
  changed(files: readonly string[]): void {
    for (const kept of this.kept.values())
      if (kept.drawn?.files.some((file) => files.includes(file))) void this.ask(kept);
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.kept.clear();
  }

  private async ask(kept: Kept): Promise<void> {
    const name = `sunwright-${shortHash(JSON.stringify(kept.block))}`;
    const drawn = await this.draw(kept.block, name).catch((error) => failed(this.whyNot(error)));
    if (JSON.stringify(drawn) === JSON.stringify(kept.drawn)) return;
    kept.drawn = drawn;
    // Blocks of one page come one after the other: the page is not made again for each.
    this.timer ??= setTimeout(() => {
      this.timer = undefined;
      this.refreshes++;
      this.refresh();
    }, patience);
  }

  /** What the last pages made use of stays, however much that is: letting go of it would make it be drawn for ever. */
  private letGo(): void {
    for (const [key, { used, drawn }] of this.kept) {
      if (this.kept.size <= most) return;
      if (drawn && used < this.refreshes - 1) this.kept.delete(key);
    }
  }
}

function failed(problem: string): DrawnBlock {
  return { marks: [], problems: [problem], cautions: [], files: [] };
}

/** A name for a page's elements, from the text itself; whether two are ever alike does no harm. */
function shortHash(text: string): string {
  let hash = 0;
  for (const letter of text) hash = (Math.imul(hash, 31) + letter.codePointAt(0)!) | 0;
  return (hash >>> 0).toString(36);
}
