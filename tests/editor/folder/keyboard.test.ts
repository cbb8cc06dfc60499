import { assert } from "chai";
import { commands, extensions } from "vscode";
import { closeAll, extensionId, placeCursor, positionOf, show, untilFound } from "../designs";
import { layHouse } from "../house";
import { focusInPanel, seen, thing } from "../panel";
import { command, untilAnswered, untilAsked } from "../quick-input";
import { hand } from "../stage";
import { later, until } from "../until";

interface Named {
  readonly command: string;
  readonly title: string;
}

const { contributes } = extensions.getExtension(extensionId)!.packageJSON as {
  contributes: { commands: readonly Named[] };
};
const titleOf = (name: string) => contributes.commands.find(({ command }) => command === `sunwright.${name}`)!.title;

/** Those that mean something without a design. */
const always = ["restartServer", "showReference", "showDiagram", "newSite", "newPart"];
const aboutDesigns = ["exportDrawing", "whatIf", "whatStaysLive", "howToIsolate", "showFindings"];

describe("by keys alone", function () {
  this.timeout(120_000);

  beforeEach(async () => {
    await closeAll();
    await commands.executeCommand("notifications.clearAll");
  });
  after(closeAll);

  /** Our own among the commands that the list of all commands offers at this moment. */
  async function offered(test: Mocha.Context): Promise<string[]> {
    await hand(test, "press", { key: "F1" });
    await untilAsked(test, "name of a command");
    await later(150);
    await hand(test, "type", { text: "Sunwright: " });
    const rows = await until("commands are offered", async () => {
      await later(500);
      const found = await hand<string[]>(test, "words", { selector: ".quick-input-list .monaco-list-row" });
      return found.some((words) => words.includes("Sunwright")) && found;
    });
    await hand(test, "press", { key: "Escape" });
    await untilAnswered(test);
    return contributes.commands
      .filter(({ title }) => rows.some((words) => words.includes(`Sunwright: ${title}`)))
      .map(({ command }) => command.replace("sunwright.", ""))
      .sort();
  }

  async function untilSaid(test: Mocha.Context, text: string): Promise<void> {
    await until(`it is said: ${text}`, async () => {
      const said = await hand<string[]>(test, "words", { selector: ".notifications-toasts" });
      return said.some((words) => words.includes(text));
    });
  }

  it("every command is one that is known here", () => {
    const names = contributes.commands.map(({ command }) => command.replace("sunwright.", ""));
    assert.sameMembers(names, [...always, ...aboutDesigns, "clearWhatIf"]);
  });

  it("without a design only those are offered that mean something then", async function () {
    await show("notes.txt");
    assert.deepEqual(await offered(this), [...always].sort());
  });

  for (const name of aboutDesigns)
    it(`without a design ${name} says what is wanting`, async function () {
      await show("notes.txt");
      await commands.executeCommand(`sunwright.${name}`);
      await untilSaid(this, "Open a design (a .sun file) first");
    });

  it("with a design in front all are offered that have something to do", async function () {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    await placeCursor(positionOf(document, "string S1"));
    assert.deepEqual(await offered(this), [...always, ...aboutDesigns].sort());
    await commands.executeCommand("sunwright.whatIf", "S1.count = 14");
    assert.include(await offered(this), "clearWhatIf");
    await commands.executeCommand("sunwright.clearWhatIf");
    assert.notInclude(await offered(this), "clearWhatIf");
  });

  it("they are offered with the keys in the diagram too, and are about the design beside it", async function () {
    await show(await layHouse());
    await commands.executeCommand("sunwright.showDiagram");
    await seen(this, "the string is drawn", thing("S1"), () => true, 45_000);
    await focusInPanel(this, thing("S1"));
    await until(
      "the keys are in the panel",
      async () => (await seen(this, "the string has the focus", thing("S1"))).hasFocus,
    );
    assert.includeMembers(await offered(this), aboutDesigns);
    await focusInPanel(this, thing("S1"));
    void commands.executeCommand("sunwright.howToIsolate");
    await untilAsked(this, "An item or a run that should be dead");
    await hand(this, "press", { key: "Escape" });
    await untilAnswered(this);
  });

  it("the list of commands runs them", async function () {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    await placeCursor(positionOf(document, "string S1"));
    await command(this, `Sunwright: ${titleOf("howToIsolate")}`);
    await untilAsked(this, "An item or a run that should be dead");
    await hand(this, "press", { key: "Enter" });
    await until("the page is shown", async () => {
      const panels = await hand<string[]>(this, "panels");
      return panels.some((text) => text.includes("S1") && /[Pp]rove/.test(text));
    });
  });
});
