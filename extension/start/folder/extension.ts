import { type ExtensionContext, workspace } from "vscode";
import { HttpFolder } from "./http-folder";
import { registerSearch } from "./search";

const scheme = "sunwright-folder";

/** Gives the editor in the browser the folder that the server at the other end serves. */
export function activate(context: ExtensionContext): void {
  const files = context.extensionUri.with({ path: context.extensionUri.path.replace(/\/folder\/?$/, "/files") });
  const folder = new HttpFolder(files.toString(true));
  context.subscriptions.push(
    folder,
    workspace.registerFileSystemProvider(scheme, folder, { isCaseSensitive: true }),
    ...registerSearch(scheme, folder),
  );
}
