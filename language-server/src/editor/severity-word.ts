import * as l10n from "@vscode/l10n";
import type { Severity } from "../design/model.js";

/** How bad something is, in a word for the reader. */
export function severityWord(severity: Severity): string {
  if (severity === "error") return l10n.t("error");
  return severity === "warning" ? l10n.t("warning") : l10n.t("note");
}
