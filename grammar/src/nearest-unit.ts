import { findUnit, normaliseUnit, type Unit, units } from "./units.js";

/** How people spell units in full or in other symbols; offered as a correction, never taken silently. */
const spoken: Readonly<Record<string, readonly string[]>> = {
  volt: ["V"],
  volts: ["V"],
  amp: ["A"],
  amps: ["A"],
  ampere: ["A"],
  amperes: ["A"],
  watt: ["W"],
  watts: ["W"],
  metre: ["m"],
  metres: ["m"],
  meter: ["m"],
  meters: ["m"],
  mtr: ["m"],
  foot: ["ft"],
  feet: ["ft"],
  inch: ["in"],
  inches: ["in"],
  ohms: ["ohm"],
  c: ["degC"],
  celsius: ["degC"],
  f: ["degF"],
  fahrenheit: ["degF"],
  kelvin: ["K"],
  percent: ["%"],
  pct: ["%"],
  "%/c": ["%/degC", "%/K"],
  "mv/c": ["mV/degC", "mV/K"],
  sqmm: ["mm2"],
  "mm^2": ["mm2"],
  mmsq: ["mm2"],
  sqm: ["m2"],
  "m^2": ["m2"],
  "w/m^2": ["W/m2"],
  degree: ["deg"],
  degrees: ["deg"],
  sec: ["s"],
  second: ["s"],
  seconds: ["s"],
  minute: ["min"],
  minutes: ["min"],
  hour: ["h"],
  hours: ["h"],
  hr: ["h"],
  mcm: ["kcmil"],
  r: ["ohm"],
  "a^2s": ["A2s"],
};

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      row.push(Math.min((row[j - 1] ?? 0) + 1, (previous[j] ?? 0) + 1, (previous[j - 1] ?? 0) + cost));
    }
    previous = row;
  }
  return previous[b.length] ?? 0;
}

/** Letters that agree in case too, so that `MOhm` offers `Mohm` before `mohm`. */
function agreement(a: string, b: string): number {
  let count = 0;
  for (let index = 0; index < Math.min(a.length, b.length); index++) if (a[index] === b[index]) count++;
  return count;
}

/**
 * Units that were probably meant by a text that is none, best first: the same letters in another case, a unit written
 * out, or one letter off.
 */
export function nearestUnit(text: string): readonly Unit[] {
  const written = normaliseUnit(text);
  const lower = written.toLowerCase();

  const sameLetters = units
    .filter((unit) => unit.name.toLowerCase() === lower && unit.name !== written)
    .sort((a, b) => agreement(b.name, written) - agreement(a.name, written));
  const inWords = (Object.hasOwn(spoken, lower) ? spoken[lower]! : []).map((name) => findUnit(name)!);
  const certain = [...new Set([...sameLetters, ...inWords])];
  if (certain.length > 0 || written.length > 12) return certain;

  // One letter off says something about a long word only: every one-letter text is one letter off `V`.
  if (written.length < 3) return [];
  return units
    .map((unit) => ({ unit, distance: editDistance(unit.name.toLowerCase(), lower) }))
    .filter(({ unit, distance }) => distance === 1 && unit.name.length > 2)
    .map(({ unit }) => unit)
    .slice(0, 3);
}
