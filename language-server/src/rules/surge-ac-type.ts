import type { AcSurgeTap } from "../circuit/plant.js";
import { wordOf } from "../design/facts.js";
import type { Judge } from "./judge.js";
import type { Outcome } from "./rule.js";
import { eachOf } from "./several.js";
import { acSurgeFixes } from "./surge-ac-choice.js";
import type { AcSurgeSubject } from "./surge-ac-taps.js";
import { isType1 } from "./surge-type-needed.js";

/** Whether a device of the a.c. side is made for it, and for lightning current where the building has rods. */
export function acType(subject: AcSurgeSubject, judge: Judge): Outcome[] {
  return eachOf(
    () => alternating(subject, judge),
    () => lightningCurrent(subject, judge),
  );
}

function alternating(subject: AcSurgeSubject, judge: Judge): Outcome {
  const { spd } = subject.tap;
  if (judge.needWord(spd, "supply") === "ac") return judge.holds("made for a.c.");
  return judge.finding({
    what: `${spd.id} is made for the d.c. side of arrays and sits on the a.c. side.`,
    why: "Its protection level is chosen for a far higher voltage: it lets through what destroys a.c. equipment.",
    todo: "Use a device for a.c. circuits.",
    spot: { thing: spd, word: "part" },
    related: [{ spot: { thing: spd, property: "supply" }, message: `${spd.id}, supply: dc` }],
    fixes: (asks) => acSurgeFixes(subject, asks),
  });
}

/** Rods on a building drive a share of the stroke into its supply line, whatever distance the array keeps. */
function lightningCurrent(subject: AcSurgeSubject, judge: Judge): Outcome {
  const { spd } = subject.tap;
  const lightningProtection = judge.needSiteWord("lightning-protection");
  if (lightningProtection === "none") return judge.notApplicable("no external lightning protection asks for type 1");
  const { type1, first } = fromTheSupply(subject);
  if (type1 === spd) return judge.holds("carries lightning current");
  if (type1) return judge.notApplicable(`${type1.id} carries lightning current at the origin`);
  if (first !== spd) return judge.notApplicable(`${first?.id ?? "another device"} is nearer to the origin`);
  const type = judge.needWord(spd, "type");
  const { site } = judge;
  return judge.finding({
    what: `${spd.id} is of ${type.replace("-", " ")}; a building with lightning protection asks for type 1 where its supply comes in.`,
    why: "A share of the stroke leaves by the supply line, and a device for induced surges is destroyed by it.",
    todo: "Use a type 1 device at the origin.",
    spot: { thing: spd, word: "part" },
    related: [
      { spot: { thing: spd, property: "type" }, message: `${spd.id}, type: ${type}` },
      ...(site ? [{ spot: { thing: site, property: "lightning-protection" }, message: "the building has rods" }] : []),
    ],
    fixes: (asks) => acSurgeFixes(subject, asks),
  });
}

/** Of the devices that the supply reaches: one that carries lightning current, and the nearest to the supply. */
function fromTheSupply({ plant, tap }: AcSurgeSubject): { type1?: AcSurgeTap["spd"]; first?: AcSurgeTap["spd"] } {
  const root = tap.path?.from;
  const here = plant.surge.filter(({ path }) => path && path.from === root);
  const hops = ({ path }: AcSurgeTap): number => path?.hops.length ?? Number.POSITIVE_INFINITY;
  const nearest = here.reduce<AcSurgeTap | undefined>(
    (best, each) => (best && hops(best) <= hops(each) ? best : each),
    undefined,
  );
  return { type1: here.find(({ spd }) => isType1(wordOf(spd, "type")))?.spd, first: nearest?.spd };
}
