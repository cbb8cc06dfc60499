import { assert } from "chai";
import { commands, type Hover, type InlayHint, languages, Range, type Uri, window, workspace } from "vscode";
import { closeAll, findings, positionOf, read, show, untilFound } from "../designs";
import { layHouse } from "../house";
import { hand } from "../stage";
import { later, until } from "../until";

const scheme = "an-older-version";

describe("a change to a design, side by side", () => {
  const committed = new Map<string, string>();
  const provider = workspace.registerTextDocumentContentProvider(scheme, {
    provideTextDocumentContent: ({ path }) => committed.get(path) ?? "",
  });
  afterEach(closeAll);
  after(() => provider.dispose());

  /** Shows a file on the right of what it was before. */
  async function compare(path: string, before: string): Promise<{ readonly left: Uri; readonly right: Uri }> {
    const { uri: right } = await show(path);
    await closeAll();
    const left = right.with({ scheme, authority: "", query: "at=yesterday" });
    committed.set(left.path, before);
    await commands.executeCommand("vscode.diff", left, right, "What was changed");
    await until("both sides are drawn", () => window.visibleTextEditors.length === 2);
    return { left, right };
  }

  const hintsOf = async (uri: Uri) =>
    (await commands.executeCommand<InlayHint[]>("vscode.executeInlayHintProvider", uri, new Range(0, 0, 200, 0))) ?? [];
  const hoverAt = async (uri: Uri, words: string) => {
    const at = positionOf(await workspace.openTextDocument(uri), words);
    return (await commands.executeCommand<Hover[]>("vscode.executeHoverProvider", uri, at)) ?? [];
  };

  it("the file is computed as ever, and the older text beside it is only read", async function () {
    const path = await layHouse();
    const { left, right } = await compare(path, (await read(path)).replace("15 x", "16 x"));
    await untilFound(right, "string-voltage");
    const hints = await until("the file has its hints", async () => {
      const found = await hintsOf(right);
      return found.length > 0 && found;
    });
    assert.isNotEmpty(hints);
    assert.isNotEmpty(await hoverAt(right, "S1 is"));

    assert.equal((await workspace.openTextDocument(left)).languageId, "sunwright");
    assert.deepEqual(languages.getDiagnostics(left), []);
    assert.deepEqual(await hintsOf(left), []);
    assert.deepEqual(await hoverAt(left, "S1 is"), []);
    // Nor does it come with the next edit.
    await later(500);
    assert.deepEqual(languages.getDiagnostics(left), []);
    await commands.executeCommand("workbench.action.compareEditor.focusPrimarySide");
    await until("the status bar says how the file stands", async () => {
      const items = await hand<string[]>(this, "words", { selector: ".statusbar-item" });
      return items.some((words) => words.includes("Frost Hollow: 1 finding"));
    });
    await hand(this, "picture", { name: "comparison" });
  });

  it("a design that is read at one place only is found once", async () => {
    const path = await layHouse();
    const { right } = await compare(path, await read(path));
    await untilFound(right, "string-voltage");
    const named = languages
      .getDiagnostics()
      .filter(([uri, marks]) => uri.path === right.path && marks.length > 0)
      .map(([uri]) => uri.scheme);
    assert.deepEqual(named, [right.scheme]);
    assert.lengthOf(
      findings(right).filter(({ message }) => message.includes("612.1 V")),
      1,
    );
  });

  it("a command that is given in the older text says where it can be given", async function () {
    const path = await layHouse();
    const { left } = await compare(path, await read(path));
    await commands.executeCommand("notifications.clearAll");
    await commands.executeCommand("workbench.action.compareEditor.focusSecondarySide");
    await until(
      "the cursor is on the left",
      () => window.activeTextEditor?.document.uri.toString() === left.toString(),
    );
    await commands.executeCommand("sunwright.whatStaysLive");
    await until("it is said", async () => {
      const said = await hand<string[]>(this, "words", { selector: ".notifications-toasts" });
      return said.some((words) => words.includes("another version of a design"));
    });
    await commands.executeCommand("notifications.clearAll");
  });
});
