import { assert } from "chai";
import { commands } from "vscode";
import { closeAll, show } from "../designs";
import { layHouse } from "../house";
import { clickInPanel, seen, thing } from "../panel";
import { hand } from "../stage";
import { later } from "../until";

interface Paints {
  readonly system: Readonly<Record<"Canvas" | "CanvasText" | "GrayText", string>>;
  readonly used: readonly string[];
}

describe("the panel in the reader's own colours", function () {
  this.timeout(120_000);

  after(async function () {
    await hand(this as unknown as Mocha.Context, "forceColours", { on: false });
    await closeAll();
  });

  it("is painted in them alone, and what differs, differs in shape and words", async function () {
    await closeAll();
    await commands.executeCommand("workbench.action.closeSidebar");
    await show(await layHouse());
    await commands.executeCommand("sunwright.showDiagram");
    await seen(this, "the string is drawn", thing("S1"), () => true, 45_000);
    await hand(this, "forceColours", { on: true });
    await clickInPanel(this, "button[aria-pressed]");
    await clickInPanel(this, thing("Q1"));
    await seen(this, "it is drawn open", thing("Q1"), ({ attributes }) => attributes["data-open"] === "true");
    await later(500);
    await hand(this, "picture", { name: "forced-diagram" });
    await paintedAlike(this, ".diagram svg *");
    const [chosen, other] = await Promise.all(
      ["true", "false"].map((word) => paints(this, `[role=tab][aria-selected=${word}]`, "border-bottom-color")),
    );
    assert.notDeepEqual(chosen!.used, other!.used, "the view that is shown is told from the others");
    const pressed = await paints(this, "button[aria-pressed=true]", "background-color");
    assert.notInclude(pressed.used, pressed.system.Canvas, "what is pressed is told from what is not");

    for (const [tab, svg] of [
      ["voltage", ".chart svg"],
      ["margins", ".chart svg"],
    ] as const) {
      await clickInPanel(this, `#tab-${tab}`);
      await seen(this, `${tab} is drawn`, svg);
      await later(700);
      await hand(this, "picture", { name: `forced-${tab}` });
      await paintedAlike(this, `${svg} *`);
    }
  });
});

/** Holds that nothing is painted in a colour that the reader did not choose, and that there is a ground and an ink. */
async function paintedAlike(test: Mocha.Context, selector: string): Promise<void> {
  const { system, used } = await paints(test, selector, "fill", "stroke");
  assert.notEqual(system.Canvas, system.CanvasText);
  assert.include(used, system.CanvasText, selector);
  assert.includeMembers(Object.values(system), [...used], selector);
}

function paints(test: Mocha.Context, selector: string, ...properties: string[]): Promise<Paints> {
  return hand(test, "paints", { selector, properties });
}
