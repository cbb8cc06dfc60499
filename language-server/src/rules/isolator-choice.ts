import { flagOf, given, wordOf } from "../design/facts.js";
import type { Item, Part } from "../design/things.js";
import type { Figure } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import { highestOf, sumOfMaximumCurrents } from "./array-figures.js";
import type { OpenedStrings } from "./isolator-device.js";
import { type Judge, NotKnown } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import { arrangementsOf } from "./pole-arrangement.js";
import type { Fix } from "./rule.js";

/** What an isolator must stand: the highest voltage and current of what it opens. */
interface Load {
  readonly voltage: Figure;
  readonly current: Figure;
}

/** Other pole arrangements of the same isolator, and other isolators in scope, that hold in every respect. */
export function isolatorFixes({ device, strings, array }: OpenedStrings, judge: Judge): readonly Fix[] {
  const load = loadOf({ device, strings, array }, judge);
  if (!load) return [];
  const fixes: Fix[] = [];
  if (isFit(device)) {
    for (const arrangement of arrangementsOf(device)) {
      if (device.declaration.nested.includes(arrangement.declaration)) continue;
      const preview = ratingPreview(arrangement, load);
      if (preview === undefined || wordOf(device, "arrangement") === arrangement.name) continue;
      fixes.push({
        title: `Wire ${device.id} as ${arrangement.name}`,
        preview,
        does: "set-property",
        thing: device,
        property: "arrangement",
        value: arrangement.name,
      });
    }
  }
  const others = partFixes(judge, {
    thing: device,
    properties: [
      "supply",
      "utilisation-category",
      "poles",
      "rated-voltage",
      "rated-current",
      "polarity-sensitive",
      "lockable",
    ],
    preview: (part) => (isFit(part) && flagOf(part, "lockable") === true ? ratingPreview(part, load) : undefined),
    order: (part) => given(part, "rated-voltage")?.value ?? 0,
  });
  return [...fixes, ...others];
}

function loadOf({ strings, array }: OpenedStrings, judge: Judge): Load | undefined {
  try {
    return { voltage: highestOf(array, judge).voltage, current: sumOfMaximumCurrents(strings, judge) };
  } catch (error) {
    if (error instanceof NotKnown) return undefined;
    throw error;
  }
}

/** Whether it is an array isolator at all, whatever it is rated for. */
function isFit(thing: Item | Part): boolean {
  return (
    wordOf(thing, "supply") === "dc" &&
    ["DC-PV1", "DC-PV2"].includes(wordOf(thing, "utilisation-category") ?? "") &&
    (given(thing, "poles")?.value ?? 0) >= 2 &&
    flagOf(thing, "opens-all-poles-together") !== false &&
    flagOf(thing, "polarity-sensitive") === false
  );
}

function ratingPreview(thing: Item | Part, { voltage, current }: Load): string | undefined {
  const volts = given(thing, "rated-voltage");
  const amperes = given(thing, "rated-current");
  if (!volts || !amperes || volts.value < voltage.value || amperes.value < current.value) return undefined;
  const share = Math.max(voltage.value / volts.value, current.value / amperes.value);
  return `${formatFigure(volts)} and ${formatFigure(amperes)}, ${percent(share)}`;
}
