import { type ExtensionContext, Uri, workspace } from "vscode";
import type { LanguageClientOptions } from "vscode-languageclient";

/** What both builds tell the language server: which documents it gets, and where its pages are. */
export function clientOptions(context: ExtensionContext): LanguageClientOptions {
  return {
    documentSelector: [{ language: "sunwright" }],
    synchronize: {
      configurationSection: "sunwright",
      fileEvents: workspace.createFileSystemWatcher("**/{*.sun,sunwright.json}"),
    },
    initializationOptions: {
      docs: Uri.joinPath(context.extensionUri, "docs").toString(),
      designChanged: true,
    },
    outputChannelName: "Sunwright",
  };
}
