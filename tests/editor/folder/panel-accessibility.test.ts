import { assert } from "chai";
import { ConfigurationTarget, commands, workspace } from "vscode";
import { at, closeAll, show, write } from "../designs";
import expected from "../heard/alder-cottage.txt";
import { clickInPanel, focusInPanel, look, seen, thing } from "../panel";
import { hand } from "../stage";
import { later, until } from "../until";

const themes = ["Default Light Modern", "Default Dark Modern", "Default High Contrast", "Default High Contrast Light"];
/** Each chart with words that only it says. */
const charts = {
  voltage: /S1: string voltage/,
  curve: /1000 W\/m² and cells at 25 °C/,
  margins: /How much of each limit is used/,
  drop: /drop from string to tracker/,
};
type Chart = keyof typeof charts;
const cottage = "examples/alder-cottage/alder-cottage.sun";

interface Access {
  readonly broken: readonly string[];
  readonly held: readonly string[];
}

/** Holds a part of a page to the rules, or to one of them; tells which rules were held to something. */
async function holds(test: Mocha.Context, what: string, selector: string, only?: string): Promise<readonly string[]> {
  const { broken, held } = await hand<Access>(test, "access", { selector, ...(only !== undefined && { only }) });
  assert.equal(broken.join("\n"), "", what);
  return held;
}

describe("for those who hear the page, and for those who see less of it", () => {
  const own = workspace.getConfiguration();

  beforeEach(async () => {
    await closeAll();
    await commands.executeCommand("workbench.action.closeSidebar");
    await commands.executeCommand("notifications.clearAll");
  });
  after(async () => {
    await own.update("workbench.colorTheme", undefined, ConfigurationTarget.Workspace);
    await closeAll();
  });

  async function open(test: Mocha.Context): Promise<void> {
    await show(cottage);
    await commands.executeCommand("sunwright.showDiagram");
    await seen(test, "the string is drawn", thing("S1"), () => true, 45_000);
  }

  async function openSwitch(test: Mocha.Context): Promise<void> {
    await clickInPanel(test, ".tools button[aria-pressed]");
    await seen(test, "there are switches", ".devices button");
    await focusInPanel(test, thing("Q1"));
    await hand(test, "press", { key: "o" });
    await seen(test, "it is open", `${thing("Q1")}[data-open='true']`);
  }

  async function turnTo(test: Mocha.Context, chart: Chart): Promise<void> {
    await clickInPanel(test, `[data-tab=${chart}]`);
    const name = await seen(test, "the view is named", `[data-tab=${chart}][aria-selected=true]`);
    assert.equal(name.attributes["aria-controls"], "view-chart");
    await seen(test, "it is drawn", ".chart-picture svg", ({ words }) => charts[chart].test(words));
  }

  it("what is heard of Alder Cottage is what was read and found good", async function () {
    this.timeout(120_000);
    await open(this);
    const parts: string[] = [];
    const hear = async (title: string, selector: string): Promise<void> => {
      parts.push(`# ${title}\n\n${await hand<string>(this, "heard", { selector })}\n`);
    };
    await hear("The diagram", "#panel");
    await openSwitch(this);
    await hear("Q1 opened: what is announced", ".news");
    await hear("Q1 opened: what stays live", ".switches");
    await clickInPanel(this, ".tools button[aria-pressed]");
    for (const chart of ["voltage", "curve", "drop"] as const) {
      await turnTo(this, chart);
      await hear(`The chart ${chart}, its figures closed`, "#view-chart");
    }
    await clickInPanel(this, "[data-tab=diagram]");
    const said = parts.join("\n");
    await hand(this, "keepText", { name: "alder-cottage.txt", text: said });
    assert.equal(said, expected);
  });

  for (const [index, theme] of themes.entries())
    it(`${theme}: nothing in any view of the panel breaks a rule`, async function () {
      this.timeout(180_000);
      // What a page is made of is the same in every theme: only its colours are held to the rules again.
      const only = index === 0 ? undefined : "color-contrast";
      const held = new Set<string>();
      const hold = async (what: string, selector: string): Promise<void> => {
        for (const rule of await holds(this, what, selector, only)) held.add(rule);
      };
      await own.update("workbench.colorTheme", theme, ConfigurationTarget.Workspace);
      await open(this);
      // The theme is drawn after the text.
      await later(1_000);
      await hold("diagram", "#panel");
      await openSwitch(this);
      await hold("switches", "#panel");
      await clickInPanel(this, ".tools button[aria-pressed]");
      for (const chart of Object.keys(charts) as Chart[]) {
        await turnTo(this, chart);
        if (index === 0 && (await look(this, ".figures[open]")) === null) await clickInPanel(this, ".figures summary");
        await hold(chart, "#panel");
      }
      await clickInPanel(this, "[data-tab=diagram]");
      assert.include([...held], "color-contrast");
      if (index === 0) assert.includeMembers([...held], ["button-name", "aria-valid-attr-value", "nested-interactive"]);
    });

  it("nor in a drawing of the preview", async function () {
    this.timeout(180_000);
    // A block with an error as well: no part is called so.
    const text = '# House\n\n```sun\nsite "House" {}\nstring S1 is 3 x M { tilt: 35 deg }\n```\n';
    const page = await write("examples/heard.md", text);
    await show(page);
    await commands.executeCommand("markdown.showPreview", page);
    const isDrawn = async () => (await hand<string[]>(this, "panels")).some((words) => /3 × \?/.test(words));
    await until("the block is drawn", isDrawn, 60_000);
    for (const theme of themes) {
      await own.update("workbench.colorTheme", theme, ConfigurationTarget.Workspace);
      await later(1_000);
      await until("it is still drawn", isDrawn);
      const held = await holds(this, theme, ".sunwright-block");
      assert.includeMembers([...held], ["color-contrast", "aria-valid-attr-value"]);
    }
    await closeAll();
    await workspace.fs.delete(at("examples/heard.md"));
  });
});
