import { commands } from "vscode";
import { hand } from "./stage";
import { until } from "./until";

/** Opens the Problems panel and has it list one file only, whatever it listed before. */
export async function listProblemsOf(test: Mocha.Context, name: string): Promise<void> {
  const input = 'input[placeholder^="Filter"]';
  await commands.executeCommand("workbench.actions.view.problems");
  // Keys that come too early are the editor's, and the panel takes its time to come.
  await until("the filter has the keys", async () => {
    await hand(test, "click", { selector: input });
    return (await hand<number>(test, "count", { selector: `${input}:focus` })) > 0;
  });
  await hand(test, "press", { key: "Control+a" });
  await hand(test, "type", { text: name });
  await hand(test, "rest");
}
