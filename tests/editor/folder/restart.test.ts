import { assert } from "chai";
import { commands } from "vscode";
import { change, closeAll, findings, idOf, show, untilFound, untilGone } from "../designs";
import { layHouse } from "../house";
import { leaveOut } from "../run-all";
import { hand, stage } from "../stage";
import { until } from "../until";

describe("the language server", () => {
  afterEach(closeAll);

  it("is started again by command, with what was typed and not saved", async () => {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    await change(document, "15 x Sallow405", "16 x Sallow405");
    await until("the change is computed", () => findings(document.uri).some(({ message }) => message.includes("16 ×")));
    await commands.executeCommand("sunwright.restartServer");
    await until("it is computed again", () => findings(document.uri).some(({ message }) => message.includes("16 ×")));
    await change(document, "16 x Sallow405", "14 x Sallow405");
    await untilGone(document.uri, "string-voltage");
  });

  it("comes back when it is killed, and nothing is lost", async function () {
    if ((await stage()).host === "web") leaveOut(this, "a web worker cannot be killed from outside");
    const document = await show(await layHouse());
    await change(document, "15 x Sallow405", "16 x Sallow405");
    await until("the change is computed", () => findings(document.uri).some(({ message }) => message.includes("16 ×")));
    assert.isTrue(await hand<boolean>(this, "killServer"), "there is a server to kill");
    // Typed while there is none: the next one must know it all the same.
    await change(document, "16 x Sallow405", "17 x Sallow405");
    await until("the next server has computed it", () =>
      findings(document.uri).some(({ message }) => message.includes("17 ×")),
    );
    assert.equal(document.isDirty, true);
    await change(document, "17 x Sallow405", "14 x Sallow405");
    await untilGone(document.uri, "string-voltage");
    assert.notInclude(findings(document.uri).map(idOf), "string-voltage");
  });
});
