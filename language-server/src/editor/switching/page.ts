import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import { suppositionText } from "../../assessment/what-if-text.js";
import type { NotCounted } from "../../isolation/report.js";
import { plain } from "../markdown.js";

export function incompleteText(): string {
  return `> ${l10n.t("The text has errors. What they touch is missing from the circuit, so nothing here may be taken for dead.")}`;
}

/** Title, site, and what is supposed: a page about what no file says begins with saying so. */
export function headLines({ design, whatIf }: Assessment, title: string): string[] {
  const site = design.site?.declaration.title;
  const supposed = whatIf?.suppositions.map(suppositionText) ?? [];
  return [
    `# ${plain(title)}`,
    ...(site === undefined ? [] : [plain(site)]),
    ...supposed.map((text) => `> ${l10n.t("What if {0}. No file says so.", plain(text))}`),
  ];
}

/** A heading with a list under it; nothing where the list is empty. */
export function section(title: string, lines: readonly string[]): string[] {
  if (lines.length === 0) return [];
  return [`## ${plain(title)}`, lines.map((line) => `- ${plain(line)}`).join("\n")];
}

export function notCountedLines(list: readonly NotCounted[]): string[] {
  return list.map(({ device, why }) => `${device}: ${why}`);
}
