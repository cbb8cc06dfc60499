import { assert } from "chai";
import {
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  commands,
  type SnippetString,
  type TextDocument,
  window,
} from "vscode";
import { change, closeAll, rangeOf, show } from "../designs";
import { layCottage, layHouse } from "../house";
import { hand } from "../stage";
import { until } from "../until";

describe("completion", () => {
  afterEach(closeAll);

  /** What is offered behind some words; without the words of the text, which the editor offers where nobody else does. */
  async function offered(document: TextDocument, words: string): Promise<CompletionItem[]> {
    const position = rangeOf(document, words).end;
    const { items } = await commands.executeCommand<CompletionList>(
      "vscode.executeCompletionItemProvider",
      document.uri,
      position,
    );
    return items.filter(({ kind }) => kind !== CompletionItemKind.Text);
  }
  const labels = (items: readonly CompletionItem[]) =>
    items.map(({ label }) => (typeof label === "string" ? label : label.label));

  it("offers parts of the right kind from the files that are used", async () => {
    const document = await show(await layHouse((text) => `${text}\nisolator Q7 is \n`));
    const found = await until("parts are offered", async () => {
      const items = labels(await offered(document, "isolator Q7 is "));
      return items.includes("RotaryDc32") && items;
    });
    assert.notInclude(found, "Sallow405");
    assert.notInclude(found, "Solar4");
  });

  it("offers the properties that are still missing", async () => {
    const document = await show(
      await layHouse((text) => text.replace("tilt: 35 deg  azimuth: 180 deg  ", "tilt: 35 deg  ")),
    );
    await change(document, "mounting: on-roof", "mounting: on-roof  ");
    const found = await until("properties are offered", async () => {
      const items = labels(await offered(document, "mounting: on-roof  "));
      return items.includes("azimuth") && items;
    });
    assert.notInclude(found, "tilt");
  });

  it("offers the trackers of the inverter that is named", async () => {
    const document = await show(await layHouse((text) => `${text}\nrun W9 from Q1 to INV.\n`));
    await until("trackers are offered", async () => labels(await offered(document, "to INV.")).includes("pv1"));
  });

  it("goes through a new line word by word, the likeliest first", async () => {
    const document = await show(await layCottage((text) => `${text}// new\n`));
    /** What is offered behind some words at the end of the design, in the order of the list. */
    const behind = async (words: string): Promise<string[]> => {
      const editor = await window.showTextDocument(document, { preview: false });
      await editor.edit((edit) => edit.replace(document.lineAt(document.lineCount - 2).range, words));
      const order = ({ sortText, label }: CompletionItem) => sortText ?? label.toString();
      return until(`something is offered behind "${words}"`, async () => {
        const items = await offered(document, words);
        items.sort((a, b) => (order(a) < order(b) ? -1 : 1));
        return items.length > 0 && labels(items);
      });
    };
    assert.equal((await behind("run "))[0], "W14");
    assert.deepEqual(await behind("run W14 from S1 to INV."), ["pv1", "pv2", "ac", "battery"]);
    assert.includeMembers(await behind("run W14 from S1 to Q1: 18 m of "), ["Solar4", "Solar6", "Singles6"]);
    assert.deepEqual((await behind("string S9 is 3 x Hollin430 { ")).slice(0, 3), ["tilt", "azimuth", "mounting"]);
    assert.includeMembers(await behind("string S9 is 3 x Hollin430 { mounting: "), ["on-roof", "ground"]);
    assert.notInclude(await behind("battery B9 is "), "Brook4");
  });

  it("offers what is in the board, and the ways that it has free", async () => {
    const document = await show(await layCottage((text) => `${text}run W14 from Q4 to CU.\n`));
    const devices = await until("devices are offered", async () => {
      const items = labels(await offered(document, "to CU."));
      return items.length > 0 && items;
    });
    assert.includeMembers(devices, ["K1", "K8", "K9", "MS"]);
    await change(document, "    isolator MS", "    way \n    isolator MS");
    const ways = await until("ways are offered", async () => {
      const items = await offered(document, "spare-ways-usable:      yes\n    way ");
      const free = items.filter(({ detail }) => detail === "free way of CU");
      return free.length > 0 && labels(free);
    });
    // The sheet of the board has 12 ways, of which 1, 2, 8 and 9 are written.
    assert.sameMembers(ways, ["3", "4", "5", "6", "7", "10", "11", "12"]);
  });

  it("offers whole declarations with the next free name, and makes no figure up", async () => {
    const document = await show(await layCottage((text) => `${text}// new\nru\n`));
    const whole = await until("a run is offered", async () =>
      (await offered(document, "// new\nru")).find(({ label }) => label === "run W14 from … to …"),
    );
    const { value } = whole.insertText as SnippetString;
    assert.match(value, /^run W14 from \$\{1:FROM\} to \$\{2:TO\}: \$\{3:LENGTH\} m of \$\{4\|[^}]*Solar4[^}]*\|\}$/);
  });

  it("writes what was chosen, by keys", async function () {
    const document = await show(await layHouse((text) => `${text}\nisolator Q7 is Rotary\n`));
    await until("parts are offered", async () =>
      labels(await offered(document, "Q7 is Rotary")).includes("RotaryDc32"),
    );
    await commands.executeCommand("workbench.action.focusActiveEditorGroup");
    await commands.executeCommand("cursorBottom");
    await hand(this, "press", { key: "ArrowUp" });
    await hand(this, "press", { key: "End" });
    await hand(this, "press", { key: "Control+Space" });
    await until("the list is drawn", async () => {
      const rows = await hand<string[]>(this, "words", { selector: ".suggest-widget .monaco-list-row" });
      return rows.some((row) => row.includes("RotaryDc32"));
    });
    await hand(this, "press", { key: "Enter" });
    await until("the name is written", () => /isolator Q7 is RotaryDc\d+\n/.test(document.getText()));
  });
});
