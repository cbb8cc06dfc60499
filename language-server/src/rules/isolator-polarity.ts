import { isolatorFixes } from "./isolator-choice.js";
import type { OpenedStrings } from "./isolator-device.js";
import type { Judge } from "./judge.js";
import type { Outcome } from "./rule.js";

/** A device that breaks its rated current one way round only must be fed from the side its maker marks. */
export function polarity(subject: OpenedStrings, judge: Judge): Outcome {
  const { device } = subject;
  if (!judge.needFlag(device, "polarity-sensitive")) return judge.holds("not sensitive to polarity");
  const marked = judge.needWord(device, "supply-terminal");
  const facing = arraySide(subject);
  if (facing === undefined) return judge.notChecked(`no run says which side of ${device.id} faces the array`);
  if (facing === marked) return judge.holds("fed from its marked side");
  return judge.finding({
    what: `${device.id} is sensitive to polarity and marked for its supply at ${marked}; the array comes in at ${facing}.`,
    why: "Fed from the other side it drives the arc away from its quenching chamber and may not break it.",
    todo: "Swap its two ends, or use one that is not sensitive to polarity. Look at its contacts if it was ever opened on load.",
    spot: { thing: device, word: "part" },
    related: [{ spot: { thing: device, property: "supply-terminal" }, message: `${device.id} is marked here` }],
    fixes: (asked) => isolatorFixes(subject, asked),
  });
}

/** The terminal of a device at which the way from a string reaches it. */
function arraySide({ device, strings, array }: OpenedStrings): string | undefined {
  const way = array.strings.find(({ string }) => string === strings[0]);
  const index = way ? way.steps.indexOf(device) : -1;
  const before = index > 0 ? way?.steps[index - 1] : undefined;
  if (before?.is === "run") return [before.from, before.to].find((end) => end?.item === device)?.terminal;
  const after = way?.steps[index + 1];
  if (after?.is !== "run") return undefined;
  const leaves = [after.from, after.to].find((end) => end?.item === device)?.terminal;
  return leaves && otherSide(leaves);
}

function otherSide(terminal: string): string {
  return terminal === "in" ? "out" : "in";
}
