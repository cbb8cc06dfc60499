import { assert } from "chai";
import { Uri, workspace } from "vscode";
import { change, closeAll, findings, show, untilFound, untilGone } from "../designs";
import { until } from "../until";

describe("several folders in one window", () => {
  afterEach(closeAll);

  const inFolder = (name: string, path: string) => {
    const folder = workspace.workspaceFolders!.find(({ uri }) => uri.path.endsWith(`/${name}`));
    if (!folder) throw new Error(`${name} is not open`);
    return Uri.joinPath(folder.uri, path);
  };

  it("are computed, each with the sheets beside it", async () => {
    assert.lengthOf(workspace.workspaceFolders!, 3);
    const fault = await show(inFolder("training", "one-module-too-many.sun"));
    await untilFound(fault.uri, "string-voltage");
    const house = await show(inFolder("alder-cottage", "alder-cottage.sun"));
    await until("the other house is computed", () => findings(house.uri).length > 0);
    await change(house, "string S1 is 11 x", "string S1 is 15 x");
    await untilFound(house.uri, "string-voltage");
    await change(fault, "15 x Sallow405", "14 x Sallow405");
    await untilGone(fault.uri, "string-voltage");
    await untilFound(house.uri, "string-voltage");
  });
});
