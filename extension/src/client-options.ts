import { type ExtensionContext, l10n, Uri, workspace } from "vscode";
import type { LanguageClientOptions } from "vscode-languageclient";
import { designSelector } from "./designs";
import { renameCommand } from "./rename-at";

/** What both builds tell the language server: which documents it gets, where its pages are, and its words. */
export function clientOptions(context: ExtensionContext): LanguageClientOptions {
  return {
    documentSelector: designSelector(),
    synchronize: {
      configurationSection: "sunwright",
      fileEvents: workspace.createFileSystemWatcher("**/{*.sun,sunwright.json}"),
    },
    initializationOptions: {
      docs: Uri.joinPath(context.extensionUri, "docs").toString(),
      designChanged: true,
      renameCommand,
      words: l10n.bundle,
    },
    outputChannelName: "Sunwright",
  };
}
