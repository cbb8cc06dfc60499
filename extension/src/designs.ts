import { languages, type TextDocument, type TextEditor, window, workspace } from "vscode";

/**
 * The texts that are computed: those that lie where the user works, and those in no file yet. What the editor shows of an
 * older version of a file, as on the left of a comparison, lies nowhere: the sheets beside it are those of today, so what
 * would be told of it was never true, and every problem would be listed twice.
 */
export function designSelector(): { language: string; scheme: string }[] {
  const folders = (workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme);
  // A workspace that is on no disk may have its folders later than its first text.
  const written = workspace.textDocuments
    .map(({ uri }) => uri.scheme)
    .filter((scheme) => workspace.fs.isWritableFileSystem(scheme));
  return [...new Set(["file", "untitled", ...folders, ...written])].map((scheme) => ({
    language: "sunwright",
    scheme,
  }));
}

export function isDesign(document: TextDocument): boolean {
  return languages.match(designSelector(), document) > 0;
}

/** The design in front. With the keys in a panel no editor is, and what stands beside it is still what one looks at. */
export function designInFront(): TextEditor | undefined {
  const { activeTextEditor, visibleTextEditors } = window;
  const editors = activeTextEditor ? [activeTextEditor] : visibleTextEditors;
  return editors.find(({ document }) => isDesign(document));
}
