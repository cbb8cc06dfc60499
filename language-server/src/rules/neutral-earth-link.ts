import type { NeutralEarthLink, Plant } from "../circuit/plant.js";
import { wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import type { Judge } from "./judge.js";
import { type Island, islandMembers, islandsOf, outermost } from "./mains.js";
import { listed } from "./phrases.js";
import { type Finding, type Fix, type Missing, type Outcome, type Related, rule } from "./rule.js";

const island: Source = {
  title: "BS 7671:2018",
  clause: "551.4.3.2.1 and the guidance on island mode: neutral–earth bond relay and own electrode",
  basis: "read",
};
const once: Source = {
  title: "BS 7671:2018",
  clause: "411.4.2 and 551.6, neutral earthed at one point",
  basis: "memory",
};
const international: Source = {
  title: "IEC 60364-5-55 and IEC 60364-8-82",
  clause: "551.4.3 and 551.6, earthing of the neutral with and without the public supply",
  basis: "memory",
};

/** One mode of one piece of wiring, with the joints of neutral and earth that are closed in it. */
interface Mode {
  readonly is: "mode";
  readonly mode: "grid" | "island";
  /** The supply, or the inverter that feeds the island. */
  readonly source: Item;
  readonly links: readonly NeutralEarthLink[];
  /** Links that are closed in this mode, in a place that it does not reach. */
  readonly elsewhere: readonly Item[];
}
/** A link that must never be closed beside the supplier's own. */
interface Interlock {
  readonly is: "interlock";
  readonly link: Item;
}
type Subject = Mode | Interlock;

/** Neutral and earth are joined once, whatever mode the installation is in. */
export const neutralEarthLink = rule<Subject>({
  id: "neutral-earth-link",
  section: "Battery and backup",
  severity: "error",
  title: "Neutral and earth are joined at exactly one place in every mode.",
  what: "Counts the joints of neutral and earth that are closed with the grid, and without it for what each inverter backs up: the supplier's own, links of the installation, and the supplier's again where nothing opens the neutral towards the grid. A link that closes in an island has to be kept open while the grid is there.",
  why: "Without a link the island's neutral floats: no earth fault drives a current that an RCD or a breaker could see. With two, neutral current flows through earth conductors, and an RCD between the two trips or goes blind.",
  sources: { gb: [island, once], iec: [international] },
  examples: {
    holds: `supply GRID { phases: 1  earthing: TN-C-S }
inverter INV is Fell5
board NEW { way 1: rcbo K1 is Rcbo25A serves "lights" }
run W1 from INV.ac to GRID: 3 m of Twin6
run W2 from INV.backup to NEW: 2 m of Twin6
link N1 { closed-in: island  at: INV.backup  interlocked: yes }
`,
    breaks: `supply GRID { phases: 1  earthing: TN-C-S }
inverter INV is Fell5
board NEW { way 1: rcbo K1 is Rcbo25A serves "lights" }
run W1 from INV.ac to GRID: 3 m of Twin6
run W2 from INV.backup to NEW: 2 m of Twin6
`,
  },
  over: "plant",
  subjects: subjectsOf,
  thing: (subject) => (subject.is === "mode" ? subject.source : subject.link),
  judge: (subject, judge) => (subject.is === "mode" ? judgeMode(subject, judge) : judgeInterlock(subject.link, judge)),
});

function* subjectsOf(plant: Plant): Generator<Subject> {
  const { neutralEarth, supplies } = plant;
  for (const source of supplies) {
    const links = neutralEarth.grid.filter(({ supply }) => !supply || supply === source);
    yield { is: "mode", mode: "grid", source, links, elsewhere: [] };
  }
  const islands = islandsOf(plant);
  for (const each of islands) yield islandMode(each, neutralEarth.island);
  if (supplies.length === 0 || islands.length === 0) return;
  for (const { link } of neutralEarth.island)
    if (link && wordOf(link, "closed-in") === "island") yield { is: "interlock", link };
}

/** Only links that the island reaches count; all of them where its neutral stays joined to the supplier's. */
function islandMode(each: Island, all: readonly NeutralEarthLink[]): Mode {
  const own = { is: "mode", mode: "island", source: each.inverter } as const;
  if (all.some(({ supply }) => supply)) return { ...own, links: all, elsewhere: [] };
  const members = new Set([...islandMembers(each)].map(({ id }) => id));
  const elsewhere: Item[] = [];
  const links = all.filter(({ link }) => {
    const place = link && placeOf(link);
    if (place === undefined || members.has(place)) return true;
    elsewhere.push(link!);
    return false;
  });
  return { ...own, links: links.map(withPlace), elsewhere };
}

/** The first word of the place where a link joins the neutral; undefined where it does not say. */
function placeOf(link: Item): string | undefined {
  return link.parent ? outermost(link).id : wordOf(link, "at")?.split(".")[0];
}

/** A link that does not say where it is may be in another island. */
function withPlace(entry: NeutralEarthLink): NeutralEarthLink {
  const { link, closed } = entry;
  if (!link || closed === "perhaps" || placeOf(link) !== undefined) return entry;
  return { link, closed: "perhaps", missing: { thing: link, property: "at" } };
}

function judgeMode(mode: Mode, judge: Judge): Outcome {
  const { links } = mode;
  if (mode.mode === "grid" && links.length === 0) return judge.notApplicable("an IT supply has no neutral–earth link");
  const closed = links.filter((link) => link.closed === "yes");
  const doubtful = links.filter((link) => link.closed === "perhaps");
  if (closed.length > 1) return judge.finding(several(mode, closed));
  if (doubtful.length > 0) return { outcome: "not-checked", missing: doubtful.flatMap(missingOf) };
  const [only] = closed;
  return only
    ? judge.holds(`${nameOf(only)}, ${mode.mode === "grid" ? "with" : "without"} the grid`)
    : judge.finding(none(mode));
}

function missingOf({ missing, link, supply }: NeutralEarthLink): Missing[] {
  const thing = link ?? supply;
  return missing ? [missing] : thing ? [{ thing, property: link ? "closed-in" : "earthing" }] : [];
}

function several(mode: Mode, closed: readonly NeutralEarthLink[]): Omit<Finding, "outcome"> {
  const { source } = mode;
  const own = closed.flatMap(({ link }) => (link ? [link] : []));
  const todo =
    mode.mode === "grid"
      ? "Keep every link of the installation open while the grid is there."
      : "Leave one link closed: part the neutral from the supplier's, or take a link away.";
  return {
    what: `${when(mode)} neutral and earth are joined ${times(closed.length)}: ${listed(closed.map(nameOf))}.`,
    why: "Neutral current flows through earth conductors, and an RCD between the joints trips or goes blind.",
    todo,
    spot: own[0] ? { thing: own[0], property: "closed-in" } : { thing: source },
    related: [...closed.map(related)],
    fixes: () => (mode.mode === "grid" ? own.flatMap((link) => islandOnly(link)) : []),
  };
}

function none(mode: Mode): Omit<Finding, "outcome"> {
  const { source, elsewhere } = mode;
  return {
    what: `${when(mode)} nothing joins neutral and earth for what ${source.id} feeds.`,
    why: "Its neutral floats: voltages to earth are anybody's guess, and an earth fault drives no current that a device could see.",
    todo: `Fit a link that closes in an island, at ${source.id}.backup.`,
    spot: { thing: source },
    related: elsewhere.map((link): Related => {
      const message = `${link.id} joins them at ${placeOf(link)}, which this island does not reach`;
      return { spot: { thing: link, property: "at" }, message };
    }),
  };
}

function related(entry: NeutralEarthLink): Related {
  const { link, supply } = entry;
  if (link) return { spot: { thing: link, property: "closed-in" }, message: `${link.id} is closed` };
  return { spot: { thing: supply!, property: "earthing" }, message: `${nameOf(entry)} is closed` };
}

function islandOnly(link: Item): Fix[] {
  return [
    {
      title: `Close ${link.id} in an island only`,
      preview: "one joint with the grid, the supplier's",
      does: "set-property",
      thing: link,
      property: "closed-in",
      value: "island",
    },
  ];
}

function judgeInterlock(link: Item, judge: Judge): Outcome {
  if (judge.needFlag(link, "interlocked")) return judge.holds("kept open while the grid is there");
  return judge.finding({
    what: `Nothing keeps ${link.id} open while the grid is there.`,
    why: "One welded or stuck contact then makes a second joint of neutral and earth that nobody notices.",
    todo: "Let the device that parts the grid drive it, so that both can never be closed together.",
    spot: { thing: link, property: "interlocked" },
  });
}

function nameOf({ link, supply }: NeutralEarthLink): string {
  return link ? link.id : `the supplier's (${supply?.id ?? "supply"})`;
}

function times(count: number): string {
  return count === 2 ? "twice" : `${count} times`;
}

function when({ mode }: Mode): string {
  return mode === "grid" ? "With the grid" : "Without the grid";
}
