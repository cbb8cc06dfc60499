import { readFileSync, writeFileSync } from "node:fs";
import { getL10nPseudoLocalized } from "@vscode/l10n-dev";
import { strFromU8, strToU8, zipSync } from "fflate";
import { filesOf } from "./vsix.js";

/** The words of the interface that a translation takes the place of, and where it stands beside them. */
const translated = {
  "extension/package.nls.json": (language: string) => `extension/package.nls.${language}.json`,
  "extension/l10n/bundle.l10n.json": (language: string) => `extension/l10n/bundle.l10n.${language}.json`,
} as const;

/** A packaged extension with a translation that nobody has to write: each letter has another that looks like it. */
export function translateVsix(vsix: string, language: string, target: string): void {
  const files = Object.fromEntries(filesOf(readFileSync(vsix)));
  for (const [words, place] of Object.entries(translated)) {
    const pseudo = getL10nPseudoLocalized(JSON.parse(strFromU8(files[words]!)));
    files[place(language)] = strToU8(JSON.stringify(pseudo));
  }
  writeFileSync(target, zipSync(files, { level: 0 }));
}
