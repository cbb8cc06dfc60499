import { assert } from "chai";
import { ConfigurationTarget, commands, extensions, workspace } from "vscode";
import { closeAll, extensionId, show, untilFound } from "../designs";
import { layHouse } from "../house";
import { command, untilAnswered } from "../quick-input";
import { hand } from "../stage";
import { later, until } from "../until";

const themes = { light: "Default Light Modern", dark: "Default Dark Modern" } as const;
const own = workspace.getConfiguration();

interface Manifest {
  readonly contributes: {
    readonly commands: readonly { readonly command: string; readonly title: string }[];
    readonly walkthroughs: readonly {
      readonly steps: readonly { readonly id: string; readonly completionEvents: readonly string[] }[];
    }[];
  };
}

describe("the walkthrough", () => {
  after(async () => {
    await own.update("workbench.colorTheme", undefined, ConfigurationTarget.Workspace);
    await closeAll();
  });

  async function begin(test: Mocha.Context): Promise<void> {
    await commands.executeCommand("workbench.action.openWalkthrough", `${extensionId}#begin`, false);
    await until("its steps are drawn", async () => {
      const words = await hand<string[]>(test, "words", { selector: ".gettingStartedContainer" });
      return words.some((each) => each.includes("Write down a site") && each.includes("Draw it"));
    });
  }

  it("has each step ticked off once it has been done, and no other", async function () {
    this.timeout(120_000);
    const { contributes } = extensions.getExtension(extensionId)!.packageJSON as Manifest;
    const events = contributes.walkthroughs[0]!.steps.flatMap(({ id, completionEvents }) =>
      completionEvents.flatMap((event) => {
        const [, name] = /^onCommand:(.*)$/.exec(event) ?? [];
        const title = contributes.commands.find(({ command: own }) => own === name)?.title;
        return title === undefined ? [] : [{ step: id, title }];
      }),
    );
    assert.deepEqual(
      events.map(({ step }) => step),
      ["site", "part", "finding", "live", "diagram"],
    );
    // The editor counts from when somebody first looks at it.
    await begin(this);
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    const last = events.pop()!;
    for (const { title } of events) {
      await commands.executeCommand("workbench.action.focusActiveEditorGroup");
      await command(this, `Sunwright: ${title}`);
      // Each asks something; a tick is there from the beginning of it.
      await later(1_500);
      await hand(this, "press", { key: "Escape" });
      await untilAnswered(this);
    }
    await begin(this);
    const ticked = async () => {
      const found: string[] = [];
      for (const { step } of [...events, last]) {
        const selector = `.gettingStartedContainer [data-done-step-id$='#${step}']`;
        const checked = await hand<string[]>(this, "attribute", { selector, name: "aria-checked" });
        if (checked.includes("true")) found.push(step);
      }
      return found;
    };
    await until("what was done is ticked off", async () => (await ticked()).length === events.length);
    assert.deepEqual(
      await ticked(),
      events.map(({ step }) => step),
    );
    await later(500);
    await hand(this, "picture", { name: "walkthrough-ticked" });
  });

  for (const [name, theme] of Object.entries(themes))
    it(`opens with its steps and a picture, ${name}`, async function () {
      await closeAll();
      await own.update("workbench.colorTheme", theme, ConfigurationTarget.Workspace);
      await begin(this);
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
