import type { Severities } from "../assessment/severities.js";
import type { Hypothesis } from "../design/what-if/hypothesis.js";
import { Overlay } from "../design/what-if/overlay.js";
import { assessAll } from "./assess-all.js";
import { findFiles } from "./inputs.js";
import { readFiles } from "./read.js";
import type { Checked } from "./report/build.js";
import type { Locator } from "./report/locate.js";
import type { Unreadable } from "./report/report.js";
import { SettingsFiles } from "./settings.js";
import type { Surroundings } from "./surroundings.js";
import { printable } from "./text/page.js";

export interface Work {
  /** Assessed one by one, as they are asked for. */
  readonly designs: Iterable<Checked>;
  /** Complete once all designs have been asked for. */
  readonly unreadable: readonly Unreadable[];
  readonly locator: Locator;
  /** What findings are shown as, by the file that a design begins in. */
  readonly severities: (entry: string) => Severities;
}

/** Reads what was asked for, and says on the error stream what could not be read or assessed. */
export async function begin(
  paths: readonly string[],
  around: Surroundings,
  suppose: readonly Hypothesis[] = [],
): Promise<Work> {
  const inputs = await findFiles(paths, around.folder);
  const files = readFiles(inputs.files, around.folder);
  const { project, asked, locator } = files;
  const unreadable: Unreadable[] = [];
  const tell = (told: Unreadable): void => {
    unreadable.push(told);
    around.err(`${printable(told.message)}\n`);
  };
  for (const told of [...inputs.unreadable, ...files.unreadable]) tell(told);
  const onFault = (uri: string, error: unknown): void => {
    const file = locator.name(uri);
    tell({ file, message: `${file} could not be checked: there is a fault in sunwright itself (${String(error)}).` });
  };
  const designs = assessAll(project, asked, onFault, suppose.length > 0 ? new Overlay(suppose) : undefined);
  const settings = new SettingsFiles(around.folder, tell);
  return { designs, unreadable, locator, severities: (entry) => settings.of(entry) };
}
