import { isBeforeBar } from "../circuit/inside.js";
import type { Plant } from "../circuit/plant.js";
import { lacksPhases, polesOf } from "../circuit/poles.js";
import { flagOf, given } from "../design/facts.js";
import type { Item, Part } from "../design/things.js";
import { counted } from "../physics/make.js";
import { type DeviceBetween, devicesBetween } from "./between-sources.js";
import { deviceFixes } from "./device-parts.js";
import { unitNames } from "./feeding-units.js";
import type { Judge } from "./judge.js";
import { stated } from "./phrases.js";
import { type Outcome, rule } from "./rule.js";

const kinds = new Set(["breaker", "rcbo", "rcd", "changeover"]);

/** Isolators by the inverter have a rule of their own; the main switch of a board is one of these. */
function isSwitching(device: Item): boolean {
  return (
    kinds.has(device.kind) || (device.parent?.kind === "board" && device.kind === "isolator" && isBeforeBar(device))
  );
}

export const devicePoles = rule<DeviceBetween>({
  id: "device-poles",
  section: "A.c. side and the existing board",
  severity: "warning",
  title: "A device between two sources opens every live conductor.",
  what: "Counts the live conductors that each breaker, RCBO, RCD, changeover and main switch between an inverter or generating unit and the supply opens: line and neutral, or three lines and neutral. Whether the neutral has to open in the circuit of a generator is argued about: the setting single-pole-rcbo of the site's limits says whether a breaker or RCBO that leaves it is accepted.",
  why: "With one source switched off the other may still hold the conductor that was left joined. Whoever finds the line dead takes the neutral for dead too.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "531.3.1 and 461.2, conductors that a device opens", basis: "memory" },
      { title: "practice of inspectors, who differ on RCBOs that open one pole", basis: "practice" },
    ],
    iec: [
      { title: "IEC 60364-5-53", clause: "531.3.1, RCDs disconnect all live conductors", basis: "memory" },
      { title: "IEC 60364-5-55", clause: "551.7, generators in parallel with the supply", basis: "memory" },
    ],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S }
board CU is SplitBoard {
    isolator MS is MainSwitch100
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `part Rcbo25Single is rcbo {
    rated-current: 25 A  curve: B  breaking-capacity: 6 kA  residual-current: 30 mA  type: A  poles: 1
}
supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S }
board CU is SplitBoard { way 9: rcbo K9 is Rcbo25Single serves INV }
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
  },
  over: "plant",
  subjects: (plant: Plant) => devicesBetween(plant, isSwitching),
  thing: ({ device }) => device,
  judge: (subject, judge) => {
    const { device, tree } = subject;
    const phases = judge.quantity(tree.root.item, "phases")?.value;
    const system = phases === 3 ? "ac-three-phase" : "ac";
    const { opened, needed } = polesOf(device, system);
    if (opened === undefined) return judge.unknown(device, "poles");
    if (lacksPhases(device, system)) return judge.unknown(device, "phases");
    // Three poles are one too many or one too few.
    if (opened === 3 && phases === undefined) return judge.unknown(tree.root.item, "phases");
    const opens = counted("N", opened, "live conductors that it opens");
    const live = counted("Nlive", needed, "live conductors there");
    if (opened >= needed) return judge.passAtLeast(opens, live, "live conductors");
    if (isLeftToSite(device) && judge.setting("single-pole-rcbo").word === "allowed")
      return judge.notApplicable("the site accepts that the neutral of a generator's circuit stays joined");
    return tooFew(subject, opened, needed, judge);
  },
});

function isLeftToSite({ kind }: Item): boolean {
  return kind === "rcbo" || kind === "breaker";
}

function tooFew({ device, units }: DeviceBetween, opened: number, needed: number, judge: Judge): Outcome {
  const [poles] = judge.need([device, "poles"]);
  const choice = isLeftToSite(device) ? ", or say single-pole-rcbo: allowed in the site's limits and why" : "";
  return judge.finding({
    what: `${device.id} opens ${opened} of ${needed} live conductors while ${unitNames(units)} ${units.length > 1 ? "feed" : "feeds"} in behind it.`,
    why: "What stays joined is held by whichever source is still there, and is easily taken for dead.",
    todo: `Use a device that opens ${needed === 2 ? "both" : `all ${needed}`}${choice}.`,
    spot: { thing: device, word: "part" },
    value: counted("N", opened, "live conductors that it opens"),
    limit: counted("Nlive", needed, "live conductors there"),
    related: [stated(device, "poles", poles)],
    fixes: (asked) =>
      deviceFixes(asked, {
        device,
        changes: ["poles", "switched-neutral"],
        preview: (part) => (polesOfPart(part) >= needed ? `opens ${polesOfPart(part)}` : undefined),
      }),
  });
}

/** As many live conductors as a part opens; a neutral that is not counted among its poles included. */
function polesOfPart(part: Part): number {
  const poles = given(part, "poles")?.value ?? 0;
  return poles + (flagOf(part, "switched-neutral") === true && (poles === 1 || poles === 3) ? 1 : 0);
}
