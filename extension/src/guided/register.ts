import { commands, type Disposable, Uri } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { newPart } from "./new-part";
import { newSite } from "./new-site";

/** The commands that lead through something new, question by question. */
export function registerGuided(client: BaseLanguageClient): Disposable[] {
  return [
    // From the explorer's menu it comes with the folder that was pointed at.
    commands.registerCommand("sunwright.newSite", (folder?: unknown) =>
      newSite(client, folder instanceof Uri ? folder : undefined),
    ),
    commands.registerCommand("sunwright.newPart", () => newPart(client)),
  ];
}
