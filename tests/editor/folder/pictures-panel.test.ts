import { ConfigurationTarget, commands, workspace } from "vscode";
import { closeAll, placeCursor, positionOf, show } from "../designs";
import { clickInPanel, seen, thing } from "../panel";
import { hand } from "../stage";
import { later } from "../until";

const themes = {
  light: "Default Light Modern",
  dark: "Default Dark Modern",
  "high-contrast": "Default High Contrast",
  "high-contrast-light": "Default High Contrast Light",
} as const;

describe("pictures of the diagram beside the text", () => {
  const own = workspace.getConfiguration();

  after(async () => {
    await own.update("workbench.colorTheme", undefined, ConfigurationTarget.Workspace);
    await closeAll();
  });

  for (const [name, theme] of Object.entries(themes))
    it(`${name}: as it is, with a card, and with switches open`, async function () {
      await own.update("workbench.colorTheme", theme, ConfigurationTarget.Workspace);
      await closeAll();
      await commands.executeCommand("workbench.action.closeSidebar");
      await commands.executeCommand("notifications.clearAll");
      const document = await show("examples/alder-cottage/alder-cottage.sun");
      await placeCursor(positionOf(document, "S1 is"));
      await commands.executeCommand("sunwright.showDiagram");
      await seen(this, "the string is marked", `${thing("S1")}.at-cursor`);
      // The theme is drawn after the text.
      await later(1_000);
      await hand(this, "picture", { name: `panel-${name}` });
      await hand(this, "pointInPanel", { selector: thing("Q1") });
      await seen(this, "the card is shown", ".card:not([hidden])");
      await hand(this, "picture", { name: `panel-card-${name}` });
      await clickInPanel(this, ".tools button[aria-pressed]");
      await seen(this, "there are switches", ".devices button");
      await clickInPanel(this, thing("Q1"));
      await seen(this, "it is open", `${thing("Q1")}[data-open='true']`);
      await later(500);
      await hand(this, "picture", { name: `panel-switches-${name}` });
    });
});
