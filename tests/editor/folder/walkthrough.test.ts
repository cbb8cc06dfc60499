import { ConfigurationTarget, commands, workspace } from "vscode";
import { closeAll, extensionId } from "../designs";
import { hand } from "../stage";
import { later, until } from "../until";

const themes = { light: "Default Light Modern", dark: "Default Dark Modern" } as const;
const own = workspace.getConfiguration();

describe("the walkthrough", () => {
  after(async () => {
    await own.update("workbench.colorTheme", undefined, ConfigurationTarget.Workspace);
    await closeAll();
  });

  for (const [name, theme] of Object.entries(themes))
    it(`opens with its steps and a picture, ${name}`, async function () {
      await closeAll();
      await own.update("workbench.colorTheme", theme, ConfigurationTarget.Workspace);
      await commands.executeCommand("workbench.action.openWalkthrough", `${extensionId}#begin`, false);
      await until("its steps are drawn", async () => {
        const words = await hand<string[]>(this, "words", { selector: ".gettingStartedContainer" });
        return words.some((each) => each.includes("Write down a site") && each.includes("Draw it"));
      });
      await later(2_000);
      await hand(this, "picture", { name: `walkthrough-${name}` });
      await hand(this, "click", { selector: ".gettingStartedContainer [data-step-id$='#finding']" });
      await until("the picture has changed", async () => {
        const panels = await hand<string[]>(this, "panels");
        return panels.some((text) => text.includes("600 V"));
      });
      await later(500);
      await hand(this, "picture", { name: `walkthrough-finding-${name}` });
    });
});
