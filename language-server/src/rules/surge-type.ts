import type { Judge } from "./judge.js";
import { type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";
import { type AcSurgeSubject, acSurgeTaps } from "./surge-ac-taps.js";
import { acType } from "./surge-ac-type.js";
import { surgeFixes } from "./surge-choice.js";
import { type SurgeSubject, spdOf, surgeTaps } from "./surge-taps.js";
import { asksForType1, isType1 } from "./surge-type-needed.js";

export const surgeType = rule<SurgeSubject | AcSurgeSubject>({
  id: "surge-type",
  section: "Surge",
  severity: "error",
  title:
    "Surge protective devices are made for the side they are on, and carry lightning current where the site asks for it.",
  what: "Looks whether each surge protective device on the d.c. side is made for d.c. Where the site has an external lightning protection system and the array does not keep its separation distance, asks for a type 1 device. On the a.c. side looks whether each device is made for a.c., and asks for type 1 where the supply comes in wherever the building has lightning protection at all.",
  why: "Without the separation distance part of the lightning current itself may run down the array's cables. A type 2 device is tested for induced surges and is destroyed by it.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "534.4, selection of surge protective devices", basis: "memory" },
      { title: "CLC/TS 50539-12", clause: "type 1 where the separation distance is not kept", basis: "memory" },
      { title: "IEC 62305-4", clause: "devices at the entry of lines into a building with rods", basis: "memory" },
    ],
    iec: [
      { title: "IEC 60364-5-53", clause: "534.4, selection of surge protective devices", basis: "memory" },
      { title: "CLC/TS 50539-12", clause: "type 1 where the separation distance is not kept", basis: "memory" },
      { title: "IEC 62305-4", clause: "devices at the entry of lines into a building with rods", basis: "memory" },
    ],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
spd F1 is SurgeDc800
inverter INV is Brook4
run W1 from S1 to INV.pv1: 8 m of Solar4
run W2 from INV.pv1 to F1: 0.3 m of Solar4
`,
    breaks: `site "Steeple View" {
    rules: gb
    lowest-temperature: -10 degC
    lightning-protection: not-separated
}
string S1 is 11 x Hollin430
spd F1 is SurgeDc800
inverter INV is Brook4
run W1 from S1 to INV.pv1: 8 m of Solar4
run W2 from INV.pv1 to F1: 0.3 m of Solar4
`,
  },
  subjects: surgeTaps,
  alsoInPlants: acSurgeTaps,
  thing: spdOf,
  judge: (subject, judge) =>
    "plant" in subject
      ? acType(subject, judge)
      : eachOf(
          () => directCurrent(subject, judge),
          () => lightningCurrent(subject, judge),
        ),
});

function directCurrent(subject: SurgeSubject, judge: Judge): Outcome {
  const { spd } = subject.tap;
  if (judge.needWord(spd, "supply") === "dc") return judge.holds("made for d.c.");
  return judge.finding({
    what: `${spd.id} is made for a.c. and sits on the array.`,
    why: "Its varistor and its disconnector are made for a voltage that passes zero: on d.c. a failed one burns on.",
    todo: "Use a device for the d.c. side of arrays.",
    spot: { thing: spd, word: "part" },
    related: [{ spot: { thing: spd, property: "supply" }, message: `${spd.id}, supply: ac` }],
    fixes: (asked) => surgeFixes(subject, asked),
  });
}

function lightningCurrent(subject: SurgeSubject, judge: Judge): Outcome {
  const { spd } = subject.tap;
  const lightningProtection = judge.needSiteWord("lightning-protection");
  if (!asksForType1(lightningProtection))
    return judge.notApplicable(
      lightningProtection === "none"
        ? "no external lightning protection asks for type 1"
        : "the separation distance to the lightning protection is kept: type 1 is not asked for",
    );
  const type = judge.needWord(spd, "type");
  if (isType1(type)) return judge.holds("carries lightning current");
  const { site } = judge;
  return judge.finding({
    what: `${spd.id} is of ${type.replace("-", " ")}; without separation distance to the lightning protection the site asks for type 1.`,
    why: "Part of the lightning current itself may come down the array's cables, and a device for induced surges is destroyed by it.",
    todo: "Use a type 1 device and join the frames to the lightning protection; or keep the separation distance and say so.",
    spot: { thing: spd, word: "part" },
    related: [
      { spot: { thing: spd, property: "type" }, message: `${spd.id}, type: ${type}` },
      ...(site
        ? [{ spot: { thing: site, property: "lightning-protection" }, message: "the separation distance is not kept" }]
        : []),
    ],
    fixes: (asked) => surgeFixes(subject, asked),
  });
}
