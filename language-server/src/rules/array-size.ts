import type { Zone } from "../circuit/array.js";
import type { Item } from "../design/things.js";
import { arrayPower, sizingRatio, stringPower } from "../physics/array-power.js";
import type { Derived, Source } from "../physics/figure.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { moduleOf, modulesInSeries } from "./array-figures.js";
import type { Judge } from "./judge.js";
import { type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";
import { stringsOf } from "./strings-of.js";

const sheet: Source = { title: "largest array, as inverter sheets state it", basis: "practice" };
const ratio: Source = { title: "array power over inverter power, as designers weigh it", basis: "practice" };

interface SizedInverter {
  readonly inverter: Item;
  readonly strings: readonly Item[];
}

/** The power of the array suits the inverter. */
export const arraySize = rule<SizedInverter>({
  id: "array-size",
  section: "Strings and trackers",
  severity: "warning",
  title: "The array is not larger than the inverter's maker allows, nor larger than was meant.",
  what: "Adds the rated power of all modules on an inverter. Holds it against the largest array that the maker allows, a warning, and its ratio to the rated a.c. power against the figure of the rule set, a note.",
  why: "Above what the maker allows, the warranty and the figures of the sheet no longer hold. A large array on a small inverter is often meant, for winter and for east-west roofs, but what it clips in summer should be known.",
  sources: { gb: [sheet, ratio], iec: [sheet, ratio] },
  examples: {
    holds: `string S1 is 13 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
`,
    breaks: `string S1 is 13 x Hollin430
string S2 is 13 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
run W2 from S2 to INV.pv2: 12 m of Solar4
`,
  },
  subjects: sizedInverters,
  thing: ({ inverter }) => inverter,
  judge({ inverter, strings }, judge) {
    if (strings.length === 0) return judge.notApplicable("no string is wired to this inverter");
    const power = powerOf(strings, judge);
    return eachOf(
      () => judgeAllowed(inverter, power, judge),
      () => judgeRatio(inverter, power, judge),
    );
  },
});

function* sizedInverters(zone: Zone): Generator<SizedInverter> {
  const { inverter } = zone;
  if (inverter) yield { inverter, strings: [...stringsOf(zone)].map(({ path }) => path.string) };
}

function powerOf(strings: readonly Item[], judge: Judge): Derived {
  return arrayPower(
    strings.map((string) => stringPower(modulesInSeries(string), judge.need([moduleOf(string), "power"])[0])),
  );
}

function judgeAllowed(inverter: Item, power: Derived, judge: Judge): Outcome {
  const [limit] = judge.need([inverter, "max-dc-power"]);
  if (power.value <= limit.value) return judge.pass(power, limit, "max-dc-power");
  const [has, allows] = formatApart(power, limit);
  return judge.finding({
    what: `The array on ${inverter.id} has ${has}; its maker allows ${allows}.`,
    why: "Above that the maker's figures and warranty do not hold.",
    todo: "Fit fewer modules, or a larger inverter, or have the maker's consent in writing.",
    spot: { thing: inverter, word: "name" },
    value: power,
    limit,
    related: [{ spot: { thing: inverter, property: "max-dc-power" }, message: `${inverter.id} allows ${allows}` }],
  });
}

function judgeRatio(inverter: Item, power: Derived, judge: Judge): Outcome {
  const port = inverter.children.find(({ kind }) => kind === "ac");
  if (!port) return judge.notChecked("the inverter has no grid port, so its a.c. power is not known");
  const [rated] = judge.need([port, "rated-power"]);
  const limit = judge.limit("dc-ac-ratio");
  const size = sizingRatio(power, rated);
  if (size.value <= limit.value) return judge.pass(size, limit, "dc-ac-ratio");
  const [has, usual] = formatApart(size, limit);
  return judge.finding({
    severity: "note",
    what: `The array on ${inverter.id} has ${formatFigure(power)}, ${has} times its ${formatFigure(rated)} a.c.; up to ${usual} times is usual.`,
    why: "In summer the inverter clips what is above its own power.",
    todo: "Write down that it is meant, or fit a larger inverter.",
    spot: { thing: inverter, word: "name" },
    value: size,
    limit,
    related: [
      { spot: { thing: port, property: "rated-power" }, message: `${inverter.id} gives ${formatFigure(rated)}` },
      ...judge.limitSet("dc-ac-ratio", "the site's own limit"),
    ],
  });
}
