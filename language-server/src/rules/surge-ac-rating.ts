import { as } from "../physics/make.js";
import { formatApart, formatFigure } from "../physics/working.js";
import type { Judge } from "./judge.js";
import { stated } from "./phrases.js";
import type { Outcome } from "./rule.js";
import { eachOf } from "./several.js";
import { acSurgeFixes } from "./surge-ac-choice.js";
import { type AcSurgeSubject, faultThrough, leastContinuous, supplyOf, weakestOf } from "./surge-ac-taps.js";

/** What a surge protective device of the a.c. side must be rated for. */
export function acRating(subject: AcSurgeSubject, judge: Judge): Outcome[] {
  return eachOf(
    () => continuousVoltage(subject, judge),
    () => shortCircuit(subject, judge),
    () => protectionLevel(subject, judge),
  );
}

function continuousVoltage(subject: AcSurgeSubject, judge: Judge): Outcome {
  const { spd } = subject.tap;
  const [rated] = judge.need([spd, "max-continuous-voltage"]);
  const least = leastContinuous(subject, judge);
  const supply = supplyOf(subject);
  if (rated.value >= least.value * (1 - 1e-9)) {
    // Without an earthed neutral it would have to stand more: what stands that needs no telling apart.
    if (rated.value < Math.sqrt(3) * least.value) judge.needWord(supply, "earthing");
    return judge.passAtLeast(as("Uc", rated), least, "continuous voltage");
  }
  const [stands, asked] = formatApart(rated, least);
  return judge.finding({
    what: `${spd.id} stands ${stands} continuously; ${supply.id} asks for ${asked}.`,
    why: "At the highest voltage of the supply it conducts without any surge, heats up and burns.",
    todo: `Use a device for at least ${asked}.`,
    spot: { thing: spd, word: "part" },
    value: as("Uc", rated),
    limit: least,
    related: [
      stated(spd, "max-continuous-voltage", rated),
      { spot: { thing: supply, property: "voltage" }, message: `the voltage of ${supply.id}` },
      ...judge.limitSet("surge-continuous-factor", "the share of it that the site asks for"),
    ],
    fixes: (asks) => acSurgeFixes(subject, asks),
  });
}

function shortCircuit(subject: AcSurgeSubject, judge: Judge): Outcome {
  const { spd } = subject.tap;
  const [rated] = judge.need([spd, "short-circuit-rating"]);
  const current = faultThrough(subject, judge);
  if (current.value <= rated.value) return judge.pass(current, as("Isccr", rated), "short-circuit rating");
  const [flows, stands] = formatApart(current, rated);
  return judge.finding({
    what: `${spd.id} is rated for ${stands} of short-circuit current; ${flows} may flow there.`,
    why: "When it fails at the end of its life, neither it nor its disconnector parts it from the supply.",
    todo: "Use a device with a higher short-circuit rating.",
    spot: { thing: spd, word: "part" },
    value: current,
    limit: as("Isccr", rated),
    related: [stated(spd, "short-circuit-rating", rated)],
    fixes: (asks) => acSurgeFixes(subject, asks),
  });
}

function protectionLevel(subject: AcSurgeSubject, judge: Judge): Outcome {
  const { spd } = subject.tap;
  const [level] = judge.need([spd, "protection-level"]);
  const { port, withstand, highest } = weakestOf(subject, judge);
  const name = port?.id ?? "what is plugged in";
  if (level.value <= highest.value * (1 + 1e-9)) return judge.pass(level, highest, name);
  const [lets, bound] = formatApart(level, highest);
  const isStated = withstand.origin.kind === "stated";
  return judge.finding({
    severity: "warning",
    what: `${spd.id} lets through ${lets}; for ${name}, ${isStated ? `which withstands ${formatFigure(withstand)}` : `of which ${formatFigure(withstand)} is asked`}, ${bound} is the most.`,
    why: "Its leads and reflections add to what it lets through, and what it should protect fails first.",
    todo: "Use a device with a lower protection level.",
    spot: { thing: spd, word: "part" },
    value: level,
    limit: highest,
    related: [
      stated(spd, "protection-level", level),
      ...(isStated && port ? [stated(port, "impulse-withstand", withstand)] : []),
      ...judge.limitSet("surge-protection-factor", "the share of it that the site allows"),
    ],
    fixes: (asks) => acSurgeFixes(subject, asks),
  });
}
