import { given, label } from "../design/facts.js";
import type { Item, Thing } from "../design/things.js";
import { celsius } from "../physics/constants.js";
import type { Derived, Source } from "../physics/figure.js";
import { temperatureAtLimit } from "../physics/string-length.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { moduleOf, modulesInSeries, stringColdVoltage } from "./array-figures.js";
import { countFix } from "./count-fix.js";
import type { Judge } from "./judge.js";
import { strongerParts } from "./part-fixes.js";
import { arrangementsOf } from "./pole-arrangement.js";
import { type Finding, type Fix, type Outcome, type Related, rule } from "./rule.js";
import { type StringSubject, stringOf, stringsOf } from "./strings-of.js";
import { type HolderSort, mostModules, type VoltageLimit, voltageLimits } from "./voltage-limits.js";

const array: Source = { title: "IEC 62548-1", clause: "maximum voltage of a PV array", basis: "read" };
const coldFactors: Source = { title: "IEC 60364-7-712:2017", clause: "Annex B, UOC MAX", basis: "memory" };

/** Why each limit matters. */
const reasons: Readonly<Record<HolderSort, string>> = {
  inverter:
    "An inverter's input can fail on the first cold, bright morning, and nothing can switch a string down to save it.",
  module: "Above its system voltage a module's insulation is not proven.",
  isolator: "Above its rated voltage a switch may not break the arc when it is opened.",
  fuse: "Above its rated voltage a fuse-link may not end the arc when it melts.",
  spd: "Above its continuous voltage a surge protective device heats up and can burn.",
  combiner: "Above its rated voltage the clearances inside the box are not proven.",
  cable: "Above its rated voltage a cable's insulation is not proven.",
  connector: "Above its rated voltage a connector's insulation is not proven.",
};

const needs: Readonly<Record<HolderSort, string>> = {
  inverter: "an inverter that stands more",
  module: "modules for a higher system voltage",
  isolator: "an isolator rated for more at its poles",
  fuse: "fuse-links rated for more",
  spd: "a surge protective device for more",
  combiner: "a combiner rated for more",
  cable: "a cable rated for more",
  connector: "connectors rated for more",
};

/** In what else a part that takes another's place must not be less. */
const keeps: Readonly<Partial<Record<HolderSort, readonly string[]>>> = {
  isolator: ["rated-current", "poles"],
  fuse: ["rated-current", "breaking-capacity"],
  combiner: ["rated-current", "inputs"],
  cable: ["conductor-area"],
};

/** Everything that sees a string's voltage stands it on the coldest morning. */
export const stringVoltage = rule<StringSubject>({
  id: "string-voltage",
  section: "Strings and trackers",
  severity: "error",
  title: "Everything on a string's way stands its open-circuit voltage on the coldest morning.",
  what: "Works out the open-circuit voltage of each string at the site's lowest temperature and holds it against the limit of everything that sees it: the inverter, the modules themselves, isolators at the pole arrangement that is wired, fuses, surge protective devices, combiners, cables, and connectors where they are stated. Where the temperature coefficient is not known, the rule set's table of factors takes its place; where the lowest temperature is not known either, its factor for that case. Both are listed as assumptions.",
  why: "Voltage rises as cells cool. A string that is fine on the day it is tested can exceed a limit on a cold, bright winter morning, when the inverter has not started and the whole open-circuit voltage stands on every device.",
  sources: { gb: [array, coldFactors], iec: [array, coldFactors] },
  examples: {
    holds: `string S1 is 14 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
`,
    breaks: `string S1 is 15 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
`,
  },
  subjects: stringsOf,
  thing: stringOf,
  judge(subject, judge) {
    const { path, array } = subject;
    const voltage = stringColdVoltage(path.string, judge);
    const { limits, missing, reasons: unknown } = voltageLimits(path, array, judge);
    const outcomes: Outcome[] = [];
    const exceeded: VoltageLimit[] = [];
    for (const limit of limits) {
      if (voltage.value > limit.figure.value) exceeded.push(limit);
      else
        outcomes.push(
          judge.pass(
            voltage,
            limit.figure,
            limit.sort === "connector" ? `connectors of ${label(limit.holder)}` : label(limit.holder),
          ),
        );
    }
    if (exceeded.length > 0) outcomes.push(tooHigh(subject, voltage, exceeded, judge));
    if (missing.length > 0 || unknown.length > 0)
      outcomes.push({ outcome: "not-checked", missing, reason: unknown.join("; ") || undefined });
    return outcomes;
  },
});

function tooHigh(subject: StringSubject, voltage: Derived, exceeded: readonly VoltageLimit[], judge: Judge): Finding {
  const { string } = subject.path;
  const [tightest, ...others] = [...exceeded].sort((a, b) => a.figure.value - b.figure.value) as [
    VoltageLimit,
    ...VoltageLimit[],
  ];
  const [reached, stands] = formatApart(voltage, tightest.figure);
  const most = mostModules(subject.path, subject.array, judge) ?? 0;
  const fewer =
    most > 0 ? `Fit at most ${most} in series, or ${needs[tightest.sort]}.` : `Take ${needs[tightest.sort]}.`;
  return judge.finding({
    what: `${string.id}: ${string.count} × ${label(moduleOf(string))} ${reach(voltage, reached, judge)}; ${named(tightest)} stands ${stands}.${failsBelow(string, tightest)}`,
    why: reasons[tightest.sort],
    todo: fewer,
    spot: { thing: string, word: "count" },
    value: voltage,
    limit: tightest.figure,
    related: [related(tightest), ...others.map(related)],
    fixes: (asked) => fixes(subject, voltage, exceeded, tightest, asked),
  });
}

/** "reach 634.6 V at −10 °C", and what was taken where a figure is not stated. */
function reach(voltage: Derived, figure: string, judge: Judge): string {
  const lowest = judge.siteQuantity("lowest-temperature");
  const at = lowest ? ` at ${formatFigure(lowest)}` : "";
  return `reach ${figure}${at}${voltage.note ? ` (${voltage.note})` : ""}`;
}

/** 85 °C, to which modules are tested (common practice, no source): hotter than that, a cell is not in service. */
const hottestAtAll = celsius(85);

/** The temperature from which downwards the limit is exceeded, where the module's own coefficient says it. */
function failsBelow(string: Item, { figure }: VoltageLimit): string {
  const module = moduleOf(string);
  const coefficient = given(module, "open-circuit-voltage-coefficient");
  const voltage = given(module, "open-circuit-voltage");
  if (!coefficient || !voltage) return "";
  const at = temperatureAtLimit({ modules: modulesInSeries(string), voltage }, coefficient, figure);
  if (!at) return "";
  return at.value > hottestAtAll ? " It fails at any temperature." : ` It fails below ${formatFigure(at)}.`;
}

function named({ holder, sort }: VoltageLimit): string {
  if (sort === "cable" && holder.is === "run" && holder.cable) return `${holder.cable.name} of ${holder.id}`;
  return sort === "connector" ? `the connectors of ${label(holder)}` : label(holder);
}

function related(limit: VoltageLimit): Related {
  const { at, property, figure } = limit;
  return { spot: { thing: at, property }, message: `${named(limit)} stands ${formatFigure(figure)}` };
}

function fixes(
  { path, array }: StringSubject,
  voltage: Derived,
  exceeded: readonly VoltageLimit[],
  tightest: VoltageLimit,
  judge: Judge,
): Fix[] {
  const { string } = path;
  const list: Fix[] = [];
  const most = mostModules(path, array, judge);
  if (most !== undefined) list.push(...countFix(string, most, tightest.figure, judge));
  for (const { sort, holder, property } of exceeded) {
    if (sort === "isolator") list.push(...arrangementFixes(holder, voltage, judge));
    if (sort !== "module" && sort !== "connector" && (holder.is === "item" || holder.is === "run"))
      list.push(...strongerParts(judge, holder, property, voltage, keeps[sort]));
  }
  return list;
}

/** Another pole arrangement of the same device that stands the voltage. */
function arrangementFixes(isolator: Thing, voltage: Derived, judge: Judge): Fix[] {
  if (isolator.is !== "item") return [];
  return arrangementsOf(isolator).flatMap((arrangement): Fix[] => {
    const rated = judge.quantity(arrangement, "rated-voltage");
    if (!rated || rated.value < voltage.value) return [];
    return [
      {
        title: `Wire ${isolator.id} as ${arrangement.name}`,
        preview: `${formatFigure(rated)} at its poles`,
        does: "set-property",
        thing: isolator,
        property: "arrangement",
        value: arrangement.name,
      },
    ];
  });
}
