import { assert } from "chai";
import { extensions, workspace } from "vscode";
import { change, closeAll, extensionId, show, untilFound, untilGone } from "../designs";
import { layHouse } from "../house";
import { leaveOut } from "../run-all";
import { hand, stage } from "../stage";

describe("a folder that is not trusted", () => {
  afterEach(closeAll);

  async function leaveOutWhereTrusted(test: Mocha.Context): Promise<void> {
    const { host } = await stage();
    if (host === "desktop") leaveOut(test, "the driver of the desktop's tests trusts every folder");
    if (host === "web") leaveOut(test, "an editor in the browser trusts folders that are on no disk");
  }

  it("is computed as any other", async function () {
    await leaveOutWhereTrusted(this);
    assert.equal(workspace.isTrusted, false);
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    await change(document, "15 x Sallow405", "14 x Sallow405");
    await untilGone(document.uri, "string-voltage");
  });

  it("has no program run but the editor's own and the language server", async function () {
    await leaveOutWhereTrusted(this);
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    const programs = await hand<string[][]>(this, "programs");
    const unknown = programs.filter(
      (words) =>
        !words.some((word) =>
          /\/server-main\.js$|bootstrap-fork|\/server\.cjs$|\/rg$|\.cjs$|\/lib\/vscode\/extensions\//.test(word),
        ),
    );
    const also = unknown.map((words) => words.join(" ")).join("; ");
    assert.equal(also, "", `also running: ${also}`);
  });

  it("has no setting of ours that could name a program", () => {
    const { configuration } = extensions.getExtension(extensionId)!.packageJSON.contributes;
    for (const [name, { type }] of Object.entries<{ type: string }>(configuration.properties)) {
      assert.notMatch(name, /path|command|program|executable/i);
      assert.include(["string", "boolean", "number", "object", "array"], type, name);
    }
  });
});
