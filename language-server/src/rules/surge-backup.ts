import { given } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Given } from "../physics/figure.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { ifKnown } from "./ac-cables.js";
import { candidates, insertFixes, wouldBe } from "./added-device.js";
import { highestOf } from "./array-figures.js";
import { deviceFixes } from "./device-parts.js";
import { judgeFuse } from "./fuse-fits.js";
import type { Judge } from "./judge.js";
import { percent } from "./part-fixes.js";
import { stated } from "./phrases.js";
import { type Fix, type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";
import { acBackup } from "./surge-ac-backup.js";
import { type AcSurgeSubject, acSurgeTaps } from "./surge-ac-taps.js";
import { surgeFixes } from "./surge-choice.js";
import { type SurgeSubject, spdOf, surgeTaps } from "./surge-taps.js";

export const surgeBackup = rule<SurgeSubject | AcSurgeSubject>({
  id: "surge-backup",
  section: "Surge",
  severity: "error",
  title: "A surge protective device that asks for a fuse ahead of it has one, and not too large.",
  what: "Where the sheet of a device asks for an upstream overcurrent device, or names the largest one that it allows, looks for fuses on the way from every string to it and holds their rating against that. On the a.c. side one breaker or fuse on the way from the supply has to be small enough; the supplier's own may be it.",
  why: "A surge protective device fails by conducting. One that relies on a fuse to part it from what feeds it burns if there is none, or if the fuse is too large to melt in time.",
  sources: {
    gb: [{ title: "BS 7671:2018", clause: "534.4.5, overcurrent protection of the device", basis: "memory" }],
    iec: [{ title: "IEC 60364-5-53", clause: "534.4.5, overcurrent protection of the device", basis: "memory" }],
  },
  examples: {
    holds: `part SurgeFused is spd {
    supply: dc  type: type-2  max-continuous-voltage: 800 V  protection-level: 2.8 kV  short-circuit-rating: 10 kA
    backup-fuse-needed: yes  max-backup-fuse: 25 A
}
string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
fuse B1 is FuseLink20
spd F1 is SurgeFused
inverter INV is Brook4
run W1 from S1 to Q1: 8 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to B1: 0.1 m of Solar4
run W4 from B1 to F1: 0.1 m of Solar4
`,
    breaks: `part SurgeFused is spd {
    supply: dc  type: type-2  max-continuous-voltage: 800 V  protection-level: 2.8 kV  short-circuit-rating: 10 kA
    backup-fuse-needed: yes  max-backup-fuse: 25 A
}
string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
spd F1 is SurgeFused
inverter INV is Brook4
run W1 from S1 to Q1: 8 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to F1: 0.2 m of Solar4
`,
  },
  subjects: surgeTaps,
  alsoInPlants: acSurgeTaps,
  thing: spdOf,
  judge: (subject, judge) => {
    if ("plant" in subject) return acBackup(subject, judge);
    const { spd, fusedBy } = subject.tap;
    const isNeeded = judge.flag(spd, "backup-fuse-needed");
    const largest = judge.quantity(spd, "max-backup-fuse");
    if (isNeeded === undefined && !largest) return judge.unknown(spd, "backup-fuse-needed");
    if (fusedBy.length === 0)
      return isNeeded === false ? judge.notApplicable("its sheet asks for no fuse ahead of it") : none(subject, judge);
    if (!largest)
      return isNeeded
        ? judge.unknown(spd, "max-backup-fuse")
        : judge.notApplicable("its sheet asks for no fuse ahead of it");
    return fusedBy.map((fuse): Outcome => {
      const [rating] = judge.need([fuse, "rated-current"]);
      if (rating.value <= largest.value) return judge.pass(rating, largest, fuse.id);
      const [has, allows] = formatApart(rating, largest);
      return judge.finding({
        what: `${fuse.id} ahead of ${spd.id} is rated ${has}; the device allows ${allows} at most.`,
        why: "It does not melt in time when the device fails, and the device burns instead.",
        todo: `Fit a fuse of at most ${allows} ahead of it.`,
        spot: { thing: fuse, word: "part" },
        value: rating,
        limit: largest,
        related: [stated(spd, "max-backup-fuse", largest)],
        fixes: (asked) => smallerFuses(fuse, largest, subject, asked),
      });
    });
  },
});

/** D.c. fuses in scope that the sheet allows and that stand the strings' voltage, in the lead of the device. */
function addedFuses({ tap, array }: SurgeSubject, judge: Judge): Fix[] {
  const { spd, run } = tap;
  const largest = judge.quantity(spd, "max-backup-fuse");
  const voltage = ifKnown(() => highestOf(array, judge).voltage);
  if (!run || !largest || !voltage) return [];
  const some = candidates(judge, ["fuse"], (fuse) =>
    eachOf(() => {
      const [rating, stands] = judge.need([fuse, "rated-current"], [fuse, "rated-voltage"]);
      const fits = judge.needWord(fuse, "category") === "gPV" && judge.needWord(fuse, "fused-poles") === "both";
      if (!fits || stands.value < voltage.value || rating.value > largest.value) return undefined;
      return judge.pass(rating, largest, fuse.id);
    }),
  );
  return insertFixes([{ run, source: run.from?.item === spd ? "to" : "from" }], some);
}

/** Fuses in scope of a rating that the sheet allows and that are otherwise no worse; one in a string has to fit that too. */
function smallerFuses(fuse: Item, largest: Given, { array }: SurgeSubject, judge: Judge): Fix[] {
  const [string, ...others] = array.devices.get(fuse) ?? [];
  const fitsString = (device: Item): boolean =>
    !string || others.length > 0 || judgeFuse({ fuse: device, string, array }, judge).every(isPass);
  return deviceFixes(judge, {
    device: fuse,
    changes: ["rated-current"],
    preview: (part) => {
      const rating = given(part, "rated-current");
      if (!rating || rating.value > largest.value || !fitsString(wouldBe(part))) return undefined;
      return `${formatFigure(rating)}, ${percent(rating.value / largest.value)}`;
    },
  });
}

function isPass({ outcome }: Outcome): boolean {
  return outcome === "pass";
}

function none(subject: SurgeSubject, judge: Judge): Outcome {
  const { spd } = subject.tap;
  const largest = judge.quantity(spd, "max-backup-fuse");
  return judge.finding({
    what: `${spd.id} asks for a fuse${largest ? ` of at most ${formatFigure(largest)}` : ""} ahead of it; a string reaches it through none.`,
    why: "When it fails at the end of its life nothing parts it from the array, and it burns.",
    todo: "Put a d.c. fuse in its lead, or use a device that asks for none.",
    spot: { thing: spd, word: "part" },
    related: [
      largest
        ? stated(spd, "max-backup-fuse", largest)
        : { spot: { thing: spd, property: "backup-fuse-needed" }, message: `${spd.id}, backup-fuse-needed: yes` },
    ],
    fixes: (asked) => [...addedFuses(subject, asked), ...surgeFixes(subject, asked)],
  });
}
