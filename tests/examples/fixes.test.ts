import { describe, expect, test } from "vitest";
import { label } from "../../language-server/src/design/facts.js";
import { actionsAt } from "../../language-server/src/editor/actions.js";
import { applied } from "../../language-server/src/editor/edits/change.js";
import { tidied } from "../../language-server/src/editor/edits/tidied.js";
import { absolute } from "../../language-server/src/place.js";
import { filesOf } from "../editor-room/example-files.js";
import { errors } from "../editor-room/refactored.js";
import { TestWorkspace, uriOf } from "../editor-room/workspace.js";
import { formatted } from "../format/formatted.js";
import { trainingDesigns } from "./examples.js";

/** Rules whose fault is a missing device, or a place taken twice, with what each of their offers begins with. */
const devices: Readonly<Record<string, string>> = {
  "training/no-isolator.sun": "Put an isolator, ",
  "training/no-switch-beside-the-inverter.sun": "Put an isolator, ",
  "training/no-switch-at-the-battery.sun": "Put an isolator, ",
  "training/combiner-without-fuses.sun": "Put a fuse, ",
  "training/nothing-against-surges-on-the-board.sun": "Put an spd, ",
  "training/board-without-a-main-switch.sun": "Put an isolator, ",
  "training/no-surge-device.sun": "Tap an spd, ",
  "training/no-second-surge-device.sun": "Tap an spd, ",
  "training/surge-device-without-its-fuse.sun": "Put a fuse, ",
  "training/one-way-for-two-circuits.sun": "Move CU.K9 to way ",
};

describe("every fix that is offered for an exercise mends what it is offered for", () => {
  test.each(trainingDesigns.map((name) => [name]))("%s", (name) => {
    const texts = filesOf(name);
    const workspace = new TestWorkspace(texts);
    const after = new TestWorkspace(texts);
    const uri = uriOf(name);
    const before = workspace.view.assessment(uri);
    const titles: string[] = [];
    for (const { notice } of workspace.view.notices(uri)) {
      const { check } = notice;
      if (check?.outcome.outcome !== "finding") continue;
      const { what } = check.outcome;
      const { start, end } = absolute(notice.place);
      for (const action of actionsAt(workspace.view, uri, start, end)) {
        const { title, answers } = action;
        if (answers.id !== check.rule.id || answers.start !== start || title.startsWith("Record ")) continue;
        titles.push(title);
        const { changes } = tidied(workspace.view, action);
        for (const file of new Set(changes.map((change) => change.uri))) {
          const own = changes.filter((change) => change.uri === file);
          const text = applied(workspace.text(file)!, own);
          expect(formatted(text), `${title}: is formatted`).toBe(text);
          after.write(file.slice(uriOf("").length), text);
        }
        const mended = after.view.assessment(uri);
        expect(errors(mended), title).toEqual(errors(before));
        const left = mended.checks.filter(
          ({ rule, thing, outcome }) =>
            rule === check.rule &&
            label(thing) === label(check.thing) &&
            outcome.outcome === "finding" &&
            outcome.what === what,
        );
        expect(left, `${title}: what is still found`).toEqual([]);
        for (const [file, text] of Object.entries(texts)) after.write(file, text);
      }
    }
    const wanted = devices[name];
    if (wanted !== undefined) expect(titles.filter((title) => title.startsWith(wanted)).length).toBeGreaterThan(0);
  });
});
