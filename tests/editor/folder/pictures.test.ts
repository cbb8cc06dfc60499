import { assert } from "chai";
import { ConfigurationTarget, commands, window, workspace } from "vscode";
import { closeAll, placeCursor, positionOf, show, untilFound } from "../designs";
import { listProblemsOf } from "../problems-panel";
import { hand } from "../stage";
import { later, until } from "../until";

/** The themes that every VS Code has, by what they are for. */
const themes = {
  light: "Default Light Modern",
  dark: "Default Dark Modern",
  "high-contrast": "Default High Contrast",
} as const;

describe("pictures", () => {
  const own = workspace.getConfiguration();

  after(async () => {
    await own.update("workbench.colorTheme", undefined, ConfigurationTarget.Workspace);
    await commands.executeCommand("workbench.action.closePanel");
    await closeAll();
  });

  /** A window as a reader meets it: one design, its own problems below, nothing else. */
  async function arrange(test: Mocha.Context, path: string): Promise<void> {
    await closeAll();
    await commands.executeCommand("workbench.action.closeSidebar");
    await commands.executeCommand("notifications.clearAll");
    const document = await show(path);
    await listProblemsOf(test, path.slice(path.lastIndexOf("/") + 1));
    await commands.executeCommand("workbench.action.focusActiveEditorGroup");
    await until("the design is drawn", () => window.activeTextEditor?.document === document);
  }

  for (const [name, theme] of Object.entries(themes))
    it(`of a fault, its hover and the problems, ${name}`, async function () {
      await own.update("workbench.colorTheme", theme, ConfigurationTarget.Workspace);
      await arrange(this, "examples/training/one-module-too-many.sun");
      const { document } = window.activeTextEditor!;
      await untilFound(document.uri, "string-voltage");
      const at = positionOf(document, "15 x Sallow405");
      await placeCursor(at);
      await commands.executeCommand("revealLine", { lineNumber: at.line + 2, at: "center" });
      await until("the squiggle is drawn", async () => {
        return (await hand<number>(this, "count", { selector: ".squiggly-error" })) > 0;
      });
      // The theme and the list are drawn after the text.
      await later(1_000);
      await hand(this, "picture", { name: `fault-${name}` });
      await commands.executeCommand("editor.action.showHover");
      const words = await until("the hover is drawn", async () => {
        const shown = await hand<string[]>(this, "words", { selector: ".monaco-hover-content" });
        return shown.some((word) => word.includes("612.1 V")) && shown;
      });
      assert.isNotEmpty(words);
      // Once more: the keys are the hover's then, and move to the sum.
      await commands.executeCommand("editor.action.showHover");
      for (let steps = 0; steps < 4; steps++) await commands.executeCommand("editor.action.scrollDownHover");
      await later(300);
      await hand(this, "picture", { name: `hover-${name}` });
    });

  it("of the example house", async function () {
    await own.update("workbench.colorTheme", themes.light, ConfigurationTarget.Workspace);
    await arrange(this, "examples/alder-cottage/alder-cottage.sun");
    const { document } = window.activeTextEditor!;
    const at = positionOf(document, "string S2");
    await commands.executeCommand("revealLine", { lineNumber: at.line, at: "center" });
    await until("the departures are drawn", async () => {
      return (await hand<number>(this, "count", { selector: ".squiggly-info" })) > 0;
    });
    await later(1_000);
    await hand(this, "picture", { name: "house-light" });
  });
});
