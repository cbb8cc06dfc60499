import { assert } from "chai";
import { commands, extensions, Uri, workspace } from "vscode";
import { extensionId } from "../designs";
import { until } from "../until";

interface Walkthrough {
  readonly id: string;
  readonly steps: readonly {
    readonly description: string;
    readonly media: { readonly svg: string };
    readonly completionEvents: readonly string[];
  }[];
}

describe("the manifest", () => {
  const { packageJSON, extensionUri } = extensions.getExtension(extensionId)!;
  const own = packageJSON.contributes;
  const walkthroughs: readonly Walkthrough[] = own.walkthroughs;
  const steps = walkthroughs.flatMap((walkthrough) => walkthrough.steps);

  it("every command that it or the walkthrough names is there", async () => {
    await extensions.getExtension(extensionId)!.activate();
    const named = new Set<string>(own.commands.map(({ command }: { command: string }) => command));
    for (const { description, completionEvents } of steps)
      for (const [, name] of `${description} ${completionEvents.join(" ")}`.matchAll(/[cC]ommand:([\w.]+)/g))
        named.add(name!);
    assert.isAbove(named.size, 8);
    await until("all commands are there", async () => {
      const known = new Set(await commands.getCommands(true));
      return [...named].every((name) => known.has(name));
    });
  });

  it("nothing is offered but what the server offers, and the signs of the trade are not marked as strange", () => {
    const editor = workspace.getConfiguration("editor", { languageId: "sunwright" });
    assert.equal(editor.get("wordBasedSuggestions"), "off");
    assert.equal(editor.get("tabSize"), 4);
    assert.isFalse(editor.get("unicodeHighlight.ambiguousCharacters"));
    assert.isUndefined(own.snippets);
  });

  it("every picture of the walkthrough is there, and its words are in the reader's language", async () => {
    assert.lengthOf(steps, 6);
    for (const { media } of steps) await workspace.fs.stat(Uri.joinPath(extensionUri, media.svg));
    assert.notInclude(JSON.stringify(packageJSON), '"%');
  });
});
