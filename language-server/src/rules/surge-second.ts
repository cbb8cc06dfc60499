import { formatValue } from "../physics/display.js";
import type { Given } from "../physics/figure.js";
import { stated as figure } from "../physics/make.js";
import { formatApart } from "../physics/working.js";
import type { Judge } from "./judge.js";
import { idsOf } from "./phrases.js";
import { type Fix, type Outcome, rule } from "./rule.js";
import { addedSurge } from "./surge-choice.js";
import { type ArraySubject, arraysOf, thingOfArray } from "./surge-needed.js";
import { placeAtInverter, placeAtString, tapFixes } from "./surge-places.js";
import { type ProtectedWay, protectedWay } from "./surge-route.js";

export const surgeSecond = rule<ArraySubject>({
  id: "surge-second",
  section: "Surge",
  severity: "warning",
  title: "More than 10 m from the array, surge protective devices stand at both ends.",
  what: "Measures the cable from each string to the inverter along its way. Above the distance of the rule set two devices are asked for, one within that distance of the string and one within it of the inverter. A device built into the inverter counts where it is stated. Reported once for each tracker, for its worst string.",
  why: "A device protects what is close to it. At the far end of a long cable a surge is reflected and can reach twice the voltage that the device lets through.",
  sources: {
    gb: [{ title: "CLC/TS 50539-12", clause: "devices at both ends above 10 m of cable", basis: "read" }],
    iec: [{ title: "CLC/TS 50539-12", clause: "devices at both ends above 10 m of cable", basis: "read" }],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
spd F1 is SurgeDc800
inverter INV is Brook4
run W1 from S1 to Q1: 8 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to F1: 0.3 m of Solar4
`,
    breaks: `string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
spd F1 is SurgeDc800
inverter INV is Brook4
run W1 from S1 to Q1: 18 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to F1: 0.3 m of Solar4
`,
  },
  subjects: arraysOf,
  thing: thingOfArray,
  judge: ({ array }, judge) => {
    const { inverter } = array;
    if (!inverter) return judge.notChecked("it is wired to no inverter: the length of its way is not known");
    const builtIn = judge.flag(inverter, "built-in-surge-protection");
    if (array.surge.length === 0 && !builtIn)
      return judge.notApplicable("no surge protective device is fitted: surge-needed says whether one must be");
    const limit = judge.limit("surge-second-distance");
    let worst: { way: ProtectedWay; distance: number } | undefined;
    for (const path of array.strings) {
      const way = protectedWay(path, array);
      const distance = unprotectedDistance(way, builtIn === true, limit.value);
      if (!worst || distance > worst.distance) worst = { way, distance };
    }
    if (!worst) return judge.notApplicable("no string is wired to it");
    const { way, distance } = worst;
    if (distance <= limit.value) return holds(way, distance, limit, judge);
    if (builtIn === undefined && unprotectedDistance(way, true, limit.value) <= limit.value)
      return judge.unknown(inverter, "built-in-surge-protection");
    return tooFar(array, way, builtIn === true, limit, judge);
  },
});

/**
 * How far an end of a way is from its nearest device, m; on a short way the way itself, where one device is enough for
 * both ends. Without a second device a long way is unprotected over its whole length.
 */
function unprotectedDistance(way: ProtectedWay, hasBuiltIn: boolean, limit: number): number {
  const length = way.length.value;
  const places = way.taps.map((tap) => tap.fromString);
  if (hasBuiltIn) places.push(length);
  if (length <= limit || places.length < 2) return length;
  return Math.max(Math.min(...places), length - Math.max(...places));
}

function holds(way: ProtectedWay, distance: number, limit: Given, judge: Judge): Outcome {
  if (distance === way.length.value) return judge.pass(way.length, limit, way.string.id);
  return judge.pass(figure("L", distance, "length", "m", "to the nearest device"), limit, way.string.id);
}

function tooFar(
  array: ArraySubject["array"],
  way: ProtectedWay,
  hasBuiltIn: boolean,
  limit: Given,
  judge: Judge,
): Outcome {
  const { string, length, taps } = way;
  const [long, bound] = formatApart(length, limit);
  const devices = taps.map(({ spd }) => spd);
  const number = taps.length + (hasBuiltIn ? 1 : 0);
  const there =
    number === 0
      ? "with no surge protective device on its way"
      : number === 1
        ? `with one surge protective device (${devices[0]?.id ?? "inside the inverter"}${placed(way)})`
        : `with its surge protective devices (${idsOf(devices)}) all at one end`;
  return judge.finding({
    what: `${long} of cable lie between ${string.id} and ${array.tracker?.id}, ${there}; above ${bound} both ends ask for one.`,
    why: "A device protects what is close to it: at the other end of a long cable a surge can reach twice the voltage.",
    todo: "Fit a second device at the unprotected end, or write down why it is not worth it.",
    spot: { thing: string, word: "name" },
    value: length,
    limit,
    related: [
      ...judge.limitSet("surge-second-distance", "the site's own limit"),
      ...taps.map(({ spd, fromString }) => ({
        spot: { thing: spd, word: "name" as const },
        message: `${spd.id} sits ${formatValue(fromString, "length", "m")} from ${string.id}`,
      })),
    ],
    fixes: (asked) => secondDevices(array, way, hasBuiltIn, limit, asked),
  });
}

/** One more device at the end that has none; two where neither end has one are more than one choice. */
function secondDevices(
  array: ArraySubject["array"],
  { string, length, taps }: ProtectedWay,
  hasBuiltIn: boolean,
  limit: Given,
  judge: Judge,
): Fix[] {
  const path = array.strings.find((each) => each.string === string);
  const isAtArray = taps.some(({ fromString }) => fromString <= limit.value);
  const isAtInverter = hasBuiltIn || taps.some(({ fromString }) => length.value - fromString <= limit.value);
  if (!path || isAtArray === isAtInverter) return [];
  return isAtArray
    ? tapFixes(placeAtInverter(path, array), addedSurge(array, "inverter", judge))
    : tapFixes(placeAtString(path), addedSurge(array, "array", judge));
}

function placed({ taps, length }: ProtectedWay): string {
  const [tap] = taps;
  if (!tap) return "";
  return tap.fromString <= length.value / 2 ? ", nearer the array" : ", nearer the inverter";
}
