import { Uri, workspace } from "vscode";

/** A file as it is named to a reader: by its way from the folder that is open. */
export function fileName(uri: string): string {
  return workspace.asRelativePath(Uri.parse(uri), false);
}

export async function exists(uri: Uri): Promise<boolean> {
  return Promise.resolve(workspace.fs.stat(uri)).then(
    () => true,
    () => false,
  );
}
