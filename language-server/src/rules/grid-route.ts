import type { Plant } from "../circuit/plant.js";
import { fact, wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import { type GridRoute, gridRoute as routeFor } from "../physics/grid-route.js";
import { busiestLine, type LineCurrents, lineDifference } from "../physics/phase-currents.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { type GridUnit, gridUnits, nameOfUnit, registeredCurrents } from "./grid-units.js";
import type { Judge } from "./judge.js";
import { hasMains } from "./mains.js";
import { listed, stated } from "./phrases.js";
import { type Finding, type Fix, type Outcome, type Related, rule } from "./rule.js";
import { eachOf } from "./several.js";

const british: readonly Source[] = [
  { title: "EREC G98", clause: "up to and including 16 A per phase; units at several premises", basis: "read" },
  { title: "EREC G99", clause: "more than 16 A per phase: agreement first", basis: "read" },
  { title: "EREC G100", clause: "issue 2 amendment 1, export limitation", basis: "read" },
];
const european: readonly Source[] = [
  { title: "EN 50549-1 and EN 50549-10", clause: "units up to 16 A per phase, and above", basis: "memory" },
];

interface Subject {
  readonly plant: Plant;
  readonly supply: Item;
}

/** The distributor is asked, or told, as the registered capacity demands. */
export const gridRoute = rule<Subject>({
  id: "grid-route",
  section: "Earthing, grid, papers",
  severity: "error",
  title: "The way to the distributor's agreement is the one that the registered capacity asks for.",
  what: "Adds the registered a.c. power of every unit on each line of the supply, existing ones included, as a current at nominal voltage. Up to the limit of the rule set a unit is connected and then notified; above it, with an export limit, or with units at several premises, the distributor is asked first. Says which way it is where none is declared, holds a declared one against it, asks for the distributor's written acceptance of an export limit, and looks at the balance of a three-phase supply.",
  why: "Connecting without the agreement that is needed is a breach of the connection terms, and may mean taking units out again. Not the array's power decides, but the a.c. rating of the inverters, batteries included.",
  sources: { gb: british, iec: european },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  grid-route: apply-first }
inverter INV is Brook4
run W1 from INV.ac to GRID: 5 m of Twin6
`,
    breaks: `supply GRID { voltage: 230 V  phases: 1  grid-route: connect-and-notify }
inverter INV is Brook4
run W1 from INV.ac to GRID: 5 m of Twin6
`,
  },
  over: "plant",
  subjects: function* (plant) {
    if (hasMains(plant)) for (const supply of plant.supplies) yield { plant, supply };
  },
  thing: ({ supply }) => supply,
  judge({ plant, supply }, judge) {
    const units = gridUnits(plant, supply);
    if (units.length === 0) return judge.notApplicable("no unit that feeds in is wired to this supply");
    const currents = registeredCurrents(plant, supply, units, judge);
    return eachOf(
      () => judgeRoute(supply, units, currents, judge),
      () => judgeExportLimit(supply, judge),
      () => judgeBalance(supply, units, currents, judge),
    );
  },
});

const ways: Readonly<Record<GridRoute, string>> = {
  "connect-and-notify": "connect first and notify afterwards",
  "apply-first": "ask the distributor first and wait for the answer",
};

function judgeRoute(supply: Item, units: readonly GridUnit[], currents: LineCurrents, judge: Judge): Outcome {
  const limit = judge.limit("notify-current");
  const { line, current } = busiestLine(currents);
  const special = specialReason(supply, judge);
  const route: GridRoute = special ? "apply-first" : routeFor(current, limit);
  const declared = judge.word(supply, "grid-route");
  const against = `${route}${special ? `: ${special.why}` : alone(supply)}`;
  if (declared === route)
    return route === "connect-and-notify"
      ? judge.pass(current, limit, against)
      : { outcome: "pass", value: current, limit, against };

  const on = currents.size > 1 ? ` on ${line}` : "";
  const [has, upTo] = formatApart(current, limit);
  const sum = special?.why ?? `${has} registered${on} by ${listed(units.map(nameOfUnit))}, ${upTo} is the limit`;
  const finding = {
    value: current,
    limit,
    related: [
      ...(special ? [special.related] : []),
      ...unitsStated(units, judge),
      ...judge.limitSet("notify-current", "the site's own limit"),
    ],
    fixes: () => [declare(supply, route, sum)],
  };
  if (declared === undefined) {
    return judge.finding({
      ...finding,
      severity: "note",
      what: `${supply.id}: ${sum}.`,
      why: `So the way is to ${ways[route]}.`,
      todo: `State grid-route: ${route}, so that form and drawing say the same.`,
      spot: { thing: supply, word: "name" },
    });
  }
  return judge.finding({
    ...finding,
    ...(route === "connect-and-notify" ? needless : premature),
    what: `${supply.id} is declared ${declared}; ${sum}.`,
    spot: { thing: supply, property: "grid-route" },
  });
}

const premature: Pick<Finding, "why" | "todo"> = {
  why: "Units connected without the agreement that they need may have to come out again.",
  todo: "Ask the distributor first, or register less.",
};
const needless: Pick<Finding, "severity" | "why" | "todo"> = {
  severity: "note",
  why: "Asking first costs weeks that nobody demands.",
  todo: "Connect, and notify in time; or write down why the distributor is asked all the same.",
};

/** What was taken where nobody says anything about other premises. */
function alone(supply: Item): string {
  const isAssumed = fact(supply, "several-premises")?.origin.kind === "assumed";
  return isAssumed ? ", taking it that nothing is fitted at other premises close by" : "";
}

/** What sends a design the long way whatever its current. */
function specialReason(supply: Item, judge: Judge): { readonly why: string; readonly related: Related } | undefined {
  const limit = judge.quantity(supply, "export-limit");
  if (limit)
    return {
      why: `an export limit of ${formatFigure(limit)} has a procedure of its own`,
      related: stated(supply, "export-limit", limit),
    };
  if (judge.flag(supply, "several-premises") === true)
    return {
      why: "units at several premises close by are announced together",
      related: { spot: { thing: supply, property: "several-premises" }, message: "several premises" },
    };
  return undefined;
}

function unitsStated(units: readonly GridUnit[], judge: Judge): Related[] {
  return units.map(({ item }) => stated(item, "rated-power", judge.need([item, "rated-power"])[0]));
}

function declare(supply: Item, route: GridRoute, because: string): Fix {
  return {
    title: `Declare ${route}`,
    preview: because,
    does: "set-property",
    thing: supply,
    property: "grid-route",
    value: route,
  };
}

/** A limit on export counts only once the distributor has accepted it. */
function judgeExportLimit(supply: Item, judge: Judge): Outcome | undefined {
  const limit = judge.quantity(supply, "export-limit");
  if (!limit) return undefined;
  if (judge.needFlag(supply, "export-limit-accepted")) return judge.holds("export limit accepted in writing");
  return judge.finding({
    what: `The export limit of ${formatFigure(limit)} at ${supply.id} is not accepted by the distributor.`,
    why: "Until it is, the whole registered capacity counts, and the scheme that limits it has not been looked at.",
    todo: "Send in the limitation scheme with the application, and wait for the answer.",
    spot: { thing: supply, property: "export-limit-accepted" },
    value: limit,
  });
}

/** Single-phase units spread over the lines of a three-phase supply. */
function judgeBalance(
  supply: Item,
  units: readonly GridUnit[],
  currents: LineCurrents,
  judge: Judge,
): Outcome | undefined {
  if (currents.size < 2) return undefined;
  const limit = judge.limit("line-difference");
  const difference = lineDifference(currents);
  if (difference.value <= limit.value) return judge.pass(difference, limit, "balance of the lines");
  const [has, allowed] = formatApart(difference, limit);
  const lines = [...currents].map(([line, current]) => `${line} ${formatFigure(current)}`);
  return judge.finding({
    severity: "warning",
    what: `The lines of ${supply.id} differ by ${has} (${listed(lines)}); ${allowed} needs no agreement.`,
    why: "Unequal lines load the neutral and lift the voltage of the busiest line.",
    todo: "Move a single-phase unit to another line, or take a three-phase one.",
    spot: { thing: supply, property: "phases" },
    value: difference,
    limit,
    related: [
      ...units.flatMap(({ item }) => {
        const line = wordOf(item, "phase");
        return line ? [{ spot: { thing: item, property: "phase" }, message: `${item.id} is on ${line}` }] : [];
      }),
      ...judge.limitSet("line-difference", "the site's own limit"),
    ],
  });
}
