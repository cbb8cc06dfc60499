import { assert } from "chai";
import { CodeAction, CodeActionKind, commands, Range, type TextDocument, workspace } from "vscode";
import { closeAll, findings, idOf, positionOf, rangeOf, show, untilFound, untilGone } from "../designs";
import { applyFix } from "../fixes";
import { layHouse } from "../house";
import { until } from "../until";

describe("refactorings", () => {
  afterEach(closeAll);

  /** A refactoring with its edit, where some words begin. */
  async function offered(document: TextDocument, words: string, title: RegExp): Promise<CodeAction> {
    return until(`${title} is offered`, async () => {
      const position = positionOf(document, words);
      const actions = await commands.executeCommand<(CodeAction | unknown)[]>(
        "vscode.executeCodeActionProvider",
        document.uri,
        new Range(position, position),
        CodeActionKind.Refactor.value,
        30,
      );
      return actions.find(
        (action): action is CodeAction => action instanceof CodeAction && title.test(action.title) && !!action.edit,
      );
    });
  }

  async function done(document: TextDocument, words: string, title: RegExp): Promise<CodeAction> {
    const action = await offered(document, words, title);
    assert.isTrue(await workspace.applyEdit(action.edit!), `"${action.title}" is applied`);
    return action;
  }

  it("split a string in two, each with its run", async () => {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    await done(document, "string S1 is", /^Split S1 into 8 and 7 modules/);
    assert.match(document.getText(), /\nstring S1 is 8 x [\s\S]*\nstring S2 is 7 x /);
    assert.match(document.getText(), /\nrun W\d+ from S2 to Q1: /);
    await untilGone(document.uri, "string-voltage");
  });

  it("put an isolator into a run, which is as long as before", async () => {
    const document = await show(await layHouse());
    await until("the design is computed", () => findings(document.uri).length > 0);
    await done(document, "run W1 from", /^Insert an isolator, \w+, into W1/);
    const [, length] = /\/\/ half of the (\S+ \w+) of W1: measure\nrun W1 /.exec(document.getText())!;
    assert.isString(length);
    assert.match(document.getText(), /\nisolator Q2 is \w+\n/);
    assert.isFalse(findings(document.uri).some((found) => idOf(found) === "unknown-name"));
  });

  it("make a part, and ask for its name", async () => {
    const document = await show(
      await layHouse((text) => text.replace(/^isolator Q1 .*$/m, "isolator Q1 { supply: dc  poles: 2 }")),
    );
    await until("the design is computed", () => findings(document.uri).length > 0);
    const { command } = await done(document, "isolator Q1 {", /^Make a part of what Q1 states/);
    assert.match(document.getText(), /\npart Isolator2 is isolator \{\n/);
    assert.include(document.getText(), "\nisolator Q1 is Isolator2\n");
    assert.equal(command!.command, "sunwright.renameAt");
  });

  it("move an item to a new file that is used from then on", async () => {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    const action = await done(document, "inverter INV is", /^Move INV to a new file /);
    const [, name] = /new file (\S+\.sun)$/.exec(action.title)!;
    assert.include(document.getText(), `use "${name}"\n`);
    assert.notInclude(document.getText(), "inverter INV is");
    const folder = document.uri.path.slice(0, document.uri.path.lastIndexOf("/") + 1);
    const moved = await workspace.openTextDocument(document.uri.with({ path: `${folder}${name}` }));
    assert.match(moved.getText(), /^inverter INV is /);
    await untilFound(document.uri, "string-voltage");
    await closeAll();
    await workspace.fs.delete(moved.uri).then(undefined, () => undefined);
  });
});

describe("fixes of several edits", () => {
  afterEach(closeAll);

  it("put the missing isolator in, and the finding is gone", async () => {
    const document = await show("examples/training/no-isolator.sun");
    await until("the design is computed", () => findings(document.uri).length > 0);
    await applyFix(document, () => rangeOf(document, "S1 is"), /^Put an isolator, RotaryDc32, into W1 \(.*V, /);
    assert.match(document.getText(), /\nisolator \w+ is RotaryDc32\n/);
    // The exercise expects its finding.
    await untilFound(document.uri, "unmet-expectation");
  });
});
