import { commands, extensions } from "vscode";
import { closeAll, extensionId } from "../designs";
import { layHouse } from "../house";
import { hand } from "../stage";

describe("a window that is loaded anew", function () {
  this.timeout(200_000);
  afterEach(closeAll);

  it("has its panel again, on the design and the view that were looked at", async function () {
    await layHouse((text) => text, "reloaded-house.sun");
    const { contributes } = extensions.getExtension(extensionId)!.packageJSON;
    const { title } = contributes.commands.find(
      ({ command }: { command: string }) => command === "sunwright.showDiagram",
    );
    await hand(this, "reloadPanel", {
      file: "trial-reloaded-house.sun",
      command: `Sunwright: ${title}`,
      click: "#tab-margins",
      selector: "#panel:has(#tab-margins[aria-selected=true]):has(.conditions[hidden]) .chart svg",
    });
    await commands.executeCommand("notifications.clearAll");
  });
});
