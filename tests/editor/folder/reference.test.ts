import { commands } from "vscode";
import { closeAll } from "../designs";
import { hand } from "../stage";
import { until } from "../until";

describe("the language reference", () => {
  afterEach(closeAll);

  it("is shown as a page", async function () {
    await commands.executeCommand("sunwright.showReference");
    await until("the page is drawn", async () => {
      const panels = await hand<string[]>(this, "panels");
      return panels.some((words) => words.includes("lowest-temperature") && words.includes("ground-flash-density"));
    });
  });
});
