/** What is opened, and how: each has tests of its own, in a folder of its name. */
export interface SessionSort {
  /** What stands in the window: a folder, a workspace file, or nothing at all. */
  readonly opens: "folder" | "file" | "nothing";
  /** Whether the examples lie in the folder. */
  readonly hasExamples: boolean;
  readonly isTrusted: boolean;
  /** The reader's, with a translation of our own words that is made for the tests; English without. */
  readonly language?: string;
}

const usual: SessionSort = { opens: "folder", hasExamples: true, isTrusted: true };

export const sorts = {
  folder: usual,
  folders: { ...usual, opens: "file" },
  untrusted: { ...usual, isTrusted: false },
  translated: { ...usual, language: "de" },
  "empty-folder": { ...usual, hasExamples: false },
  "empty-window": { ...usual, opens: "nothing", hasExamples: false },
} as const satisfies Readonly<Record<string, SessionSort>>;

export type Session = keyof typeof sorts;
export const sessions = Object.keys(sorts) as readonly Session[];
