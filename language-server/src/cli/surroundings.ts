import type { PageOptions } from "./text/page.js";

/** What the program is run in: a terminal, or a test. */
export interface Surroundings {
  readonly folder: string;
  readonly page: PageOptions;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

export const exitCodes = { clean: 0, found: 1, unusable: 2 } as const;
export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];
