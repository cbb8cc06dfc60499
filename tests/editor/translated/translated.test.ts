import { assert } from "chai";
import { commands, env, extensions, type Hover, type MarkdownString } from "vscode";
import { closeAll, extensionId, positionOf, show, untilFound } from "../designs";
import { layHouse } from "../house";
import { seen, thing } from "../panel";
import { untilAnswered, untilAsked } from "../quick-input";
import { leaveOut } from "../run-all";
import { hand, stage } from "../stage";
import { later, until } from "../until";

/** Whether a text is in the made-up translation: its letters have marks that English has not. */
function isTranslated(text: string): boolean {
  return /[À-ÖØ-öø-ɏḀ-ỿ]/.test(text);
}

describe("in the reader's language", function () {
  this.timeout(120_000);
  afterEach(closeAll);

  it("the names of the commands and the steps of the walkthrough are", async function () {
    assert.equal(env.language, "de");
    if ((await stage()).host === "web")
      leaveOut(this, "an editor in the browser reads the names of what it is served in English only");
    const { contributes } = extensions.getExtension(extensionId)!.packageJSON;
    const [{ description, steps }] = contributes.walkthroughs;
    const named: (string | { readonly value: string })[] = [
      ...contributes.commands.map(({ title }: { title: string }) => title),
      ...steps.map(({ title }: { title: string }) => title),
      description,
    ];
    for (const each of named) {
      // The editor lays what it is called in English beside the name of a command.
      const name = typeof each === "string" ? each : each.value;
      assert.isTrue(isTranslated(name), name);
    }
  });

  it("the status bar, the questions and the panel are; what rules say is not", async function () {
    const document = await show(await layHouse());
    const { message } = await untilFound(document.uri, "string-voltage");
    assert.isFalse(isTranslated(message), message);
    assert.include(message, "612.1 V");
    await until("the status bar has its words", async () => {
      const items = await hand<string[]>(this, "words", { selector: ".statusbar-item" });
      return items.some((words) => words.includes("Frost Hollow") && isTranslated(words));
    });

    void commands.executeCommand("sunwright.howToIsolate");
    const { title } = await untilAsked(this, "S1");
    assert.isTrue(isTranslated(title), title);
    await hand(this, "picture", { name: "translated-question" });
    await hand(this, "press", { key: "Escape" });
    await untilAnswered(this);

    await commands.executeCommand("sunwright.showDiagram");
    await seen(this, "the string is drawn", thing("S1"), () => true, 60_000);
    const tab = await seen(this, "there are tabs", "[role=tab]");
    assert.isTrue(isTranslated(tab.words), tab.words);
    const zoom = await seen(this, "there are buttons", ".tools button:last-child");
    assert.isTrue(isTranslated(zoom.words), zoom.words);
    const finding = await seen(this, "its finding is listed", ".findings li.error");
    assert.include(finding.words, "612.1 V");
    assert.equal((await seen(this, "the page is there", "html")).attributes.lang, "de");
    await later(500);
    await hand(this, "picture", { name: "translated" });
  });

  it("a hover has its headings so, and its sum as it is", async () => {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    const hovers = await commands.executeCommand<Hover[]>(
      "vscode.executeHoverProvider",
      document.uri,
      positionOf(document, "S1 is 15"),
    );
    const text = hovers.flatMap(({ contents }) => contents.map((part) => (part as MarkdownString).value)).join("\n");
    assert.include(text, "15 · 37.4 V");
    assert.include(text, "IEC 62548");
    assert.isTrue(isTranslated(text), text);
  });
});
