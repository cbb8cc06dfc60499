import { assert } from "chai";
import {
  type CallHierarchyIncomingCall,
  type CallHierarchyItem,
  type CallHierarchyOutgoingCall,
  commands,
  type DocumentHighlight,
  type DocumentLink,
  type FoldingRange,
  type SelectionRange,
  type SemanticTokens,
  type SemanticTokensLegend,
  type SignatureHelp,
  type SymbolInformation,
  type TextDocument,
} from "vscode";
import { change, closeAll, placeCursor, positionOf, show } from "../designs";
import { layCottage } from "../house";
import { hand } from "../stage";
import { until } from "../until";

describe("the structure of a design", () => {
  afterEach(closeAll);

  /** Asks a provider about a file until it has an answer. */
  function ask<Answer extends readonly unknown[]>(name: string, ...given: unknown[]): Promise<Answer> {
    return until(`${name} answers`, async () => {
      const answer = await commands.executeCommand<Answer>(`vscode.${name}`, ...given);
      return (answer?.length ?? 0) > 0 && answer;
    });
  }

  const behind = (document: TextDocument, words: string) => positionOf(document, words).translate(0, words.length);

  it("what feeds what is the call hierarchy", async () => {
    const document = await show(await layCottage());
    const [inverter] = await ask<CallHierarchyItem[]>(
      "prepareCallHierarchy",
      document.uri,
      positionOf(document, "INV is"),
    );
    assert.equal(inverter!.name, "INV");
    const into = await ask<CallHierarchyIncomingCall[]>("provideIncomingCalls", inverter);
    assert.includeMembers(
      into.map(({ from }) => from.name),
      ["INV.pv1", "INV.pv2", "INV.battery"],
    );
    const [isolator] = await ask<CallHierarchyItem[]>(
      "prepareCallHierarchy",
      document.uri,
      positionOf(document, "Q1 is"),
    );
    const from = await ask<CallHierarchyIncomingCall[]>("provideIncomingCalls", isolator);
    assert.deepEqual(
      from.map(({ from: { name, detail } }) => `${name}: ${detail}`),
      ["S1: PV string, Hollin430 through W1 (energy of S1)"],
    );
    const to = await ask<CallHierarchyOutgoingCall[]>("provideOutgoingCalls", isolator);
    assert.deepEqual(
      to.map(({ to: { name } }) => name),
      ["INV.pv1"],
    );
  });

  it("colours tell what a word is for", async () => {
    const document = await show(await layCottage());
    const legend = await until("there is a legend", () =>
      commands.executeCommand<SemanticTokensLegend>("vscode.provideDocumentSemanticTokensLegend", document.uri),
    );
    const { data } = await until("there are tokens", () =>
      commands.executeCommand<SemanticTokens>("vscode.provideDocumentSemanticTokens", document.uri),
    );
    const sorts = new Map<string, string>();
    let line = 0;
    let character = 0;
    for (let at = 0; at < data.length; at += 5) {
      character = data[at] === 0 ? character + data[at + 1]! : data[at + 1]!;
      line += data[at]!;
      sorts.set(`${line}:${character}`, legend.tokenTypes[data[at + 3]!]!);
    }
    const sortAt = (words: string, word: string) => {
      const { line: row, character: column } = positionOf(document, words);
      return sorts.get(`${row}:${column + words.indexOf(word)}`);
    };
    assert.equal(sortAt("string S1", "string"), "type");
    assert.equal(sortAt("string S1", "S1"), "variable");
    assert.equal(sortAt("11 x Hollin430", "Hollin430"), "class");
    assert.equal(sortAt("run W1 from", "W1"), "function");
    assert.equal(sortAt("departure surge-second", "surge-second"), "macro");
    assert.equal(sortAt("on-roof", "on-roof"), "enumMember");
  });

  it("the sentence that is being written is shown with the place that comes next", async () => {
    const document = await show(await layCottage((text) => `${text}run W99 from S1 to `));
    const place = async (words: string) => {
      const help = await until("the sentence is known", () =>
        commands.executeCommand<SignatureHelp | undefined>(
          "vscode.executeSignatureHelpProvider",
          document.uri,
          behind(document, words),
        ),
      );
      const [{ label, parameters } = { label: "", parameters: [] }] = help.signatures;
      assert.equal(label, "run NAME from TERMINAL to TERMINAL: LENGTH of CABLE");
      return parameters[help.activeParameter]!.label;
    };
    assert.equal(await place("run W99 from S1 to "), "to TERMINAL");
    await change(document, "run W99 from S1 to ", "run W99 from S1 to Q1: ");
    assert.equal(await place("run W99 from S1 to Q1: "), "LENGTH");
    await change(document, "run W99 from S1 to Q1: ", "run W99 from S1 to Q1: 3 m of ");
    assert.equal(await place("run W99 from S1 to Q1: 3 m of "), "CABLE");
  });

  it("selections, folds, links and other places of a name follow it", async () => {
    const document = await show(await layCottage());
    const [inner] = await ask<SelectionRange[]>("executeSelectionRangeProvider", document.uri, [
      positionOf(document, "180 deg"),
    ]);
    const ranges: string[] = [];
    for (let at: SelectionRange | undefined = inner; at; at = at.parent) ranges.push(document.getText(at.range));
    assert.isTrue(
      ranges.some((text) => /^azimuth: +180 deg$/.test(text)),
      ranges.join("\n---\n"),
    );
    assert.isTrue(ranges.some((text) => text.startsWith("string S1 is") && text.endsWith("}")));
    const folds = await ask<FoldingRange[]>("executeFoldingRangeProvider", document.uri);
    assert.isTrue(folds.some(({ start }) => start === positionOf(document, "board CU").line));
    const links = await ask<DocumentLink[]>("executeLinkProvider", document.uri);
    assert.isTrue(links.some(({ target }) => target?.path.endsWith("alder-cottage/parts/roof.sun")));
    const marked = await ask<DocumentHighlight[]>(
      "executeDocumentHighlights",
      document.uri,
      positionOf(document, "Q1 is"),
    );
    // Its declaration, and the ends of the three runs at it.
    assert.lengthOf(marked, 4);
    const symbols = await ask<SymbolInformation[]>("executeWorkspaceSymbolProvider", "Hollin430");
    assert.isTrue(symbols.some(({ location }) => location.uri.path.endsWith("alder-cottage/parts/roof.sun")));
  });

  it("is gone through by keys: what feeds a thing", async function () {
    const document = await show(await layCottage());
    const at = positionOf(document, "INV is");
    await ask("prepareCallHierarchy", document.uri, at);
    await placeCursor(at);
    await hand(this, "press", { key: "Shift+Alt+h" });
    await until("what feeds it is listed", async () => {
      const rows = await hand<string[]>(this, "words", { selector: ".monaco-list-row" });
      return rows.some((row) => row.includes("INV.pv1"));
    });
    await hand(this, "picture", { name: "fed-from" });
    await hand(this, "press", { key: "Escape" });
  });
});
