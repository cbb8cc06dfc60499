import type { Plant } from "../circuit/plant.js";
import { fact, wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import { formatApart } from "../physics/working.js";
import type { Judge } from "./judge.js";
import { type Island, islandsOf } from "./mains.js";
import { electrodeAsFound, electrodeLimit, electrodesIn, residualDevices } from "./own-electrode.js";
import { listed, stated } from "./phrases.js";
import { type Fix, type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";

const own: Source = {
  title: "BS 7671:2018",
  clause: "551.4.3.2.1, in island mode no reliance on the distributor's earth",
  basis: "read",
};
const stable: Source = {
  title: "BS 7671:2018",
  clause: "Table 41.5, note on resistances that may not be stable",
  basis: "memory",
};
const international: Source = {
  title: "IEC 60364-5-55",
  clause: "551.4.3.2.1, as the British book reprints it",
  basis: "memory",
};
const international41: Source = { title: "IEC 60364-4-41", clause: "411.5.3, RA · IΔn ≤ 50 V", basis: "read" };
const measuring = "542.4.2, the earthing conductor can be parted for measuring";
const parting: Source = { title: "BS 7671:2018", clause: measuring, basis: "memory" };
const partingAbroad: Source = { title: "IEC 60364-5-54", clause: measuring, basis: "memory" };

/** What goes on without the grid has an earth of its own. */
export const backupEarth = rule<Island>({
  id: "backup-earth",
  section: "Battery and backup",
  severity: "error",
  title: "What goes on without the grid has an earth electrode of the installation's own.",
  what: "For every inverter whose backup port feeds something: asks for an electrode that is used in island mode, and holds its resistance against what stays stable through the seasons and what the RCDs of the island's circuits ask for. Asks too whether it can be measured by itself.",
  why: "When the grid is lost the supplier's earth may be lost with it, be it by a broken neutral or by work on the line. An island that relies on it has then no earth at all, and every metal case in the house may be live.",
  sources: { gb: [own, stable, parting], iec: [international, international41, partingAbroad] },
  examples: {
    holds: `inverter INV is Fell5
load FREEZER { power: 200 W }
run W1 from INV.backup to FREEZER: 2 m of Twin4
electrode E2 { resistance: 48 ohm  test-point: yes }
`,
    breaks: `inverter INV is Fell5
load FREEZER { power: 200 W }
run W1 from INV.backup to FREEZER: 2 m of Twin4
`,
  },
  over: "plant",
  subjects: islandsOf,
  thing: ({ inverter }) => inverter,
  judge(island, judge) {
    const { plant, backup } = island;
    const electrodes = electrodesIn(plant, "island", judge);
    const found = electrodeAsFound(plant, judge);
    if (electrodes.length === 0 && found === undefined) return noElectrode(island, judge);
    if (electrodes.length === 0)
      return [
        judge.holds(`${found} electrode, as found`),
        judge.notChecked("the resistance of the electrode as found is not known: declare it as an electrode"),
      ];
    return eachOf(
      () => judge.holds(listed(electrodes.map(useOf))),
      () => judgeResistances(electrodes, residualDevices(backup.circuits), judge),
      ...electrodes.map((electrode) => () => judgeTestPoint(electrode, judge)),
    );
  },
});

/** `E2`, and what was taken where its line does not say when it is in use. */
function useOf(electrode: Item): string {
  const isAssumed = fact(electrode, "used-in")?.origin.kind === "assumed";
  return isAssumed ? `${electrode.id} (taken to be in use in every mode)` : electrode.id;
}

function noElectrode({ plant, inverter }: Island, judge: Judge): Outcome {
  const others = plant.electrodes.filter((electrode) => judge.word(electrode, "used-in") === "grid");
  const undecided = plant.electrodes.filter((electrode) => !others.includes(electrode));
  if (undecided.length > 0)
    return { outcome: "not-checked", missing: undecided.map((thing) => ({ thing, property: "used-in" })) };
  return judge.finding({
    what: `Without the grid, what ${inverter.id} feeds ${reliance(plant)}.`,
    why: "The supplier's earth may be lost with the grid, and every metal case is then without one.",
    todo: "Add an electrode with a test point that is used in an island, or leave the backup port unused.",
    spot: { thing: inverter },
    related: [
      ...plant.supplies.map((supply) => ({ spot: { thing: supply, property: "earthing" }, message: supply.id })),
      ...others.map((thing) => ({
        spot: { thing, property: "used-in" },
        message: `${thing.id} is used with the grid only`,
      })),
    ],
    fixes: () => others.map(useInBoth),
  });
}

function reliance({ supplies }: Plant): string {
  const [supply] = supplies;
  if (!supply) return "has no earth: no electrode is declared";
  const earthing = wordOf(supply, "earthing");
  return `relies on the earth of ${supply.id}${earthing === undefined ? "" : ` (${earthing})`}: no electrode of its own is declared for it`;
}

function useInBoth(electrode: Item): Fix {
  return {
    title: `Use ${electrode.id} in an island too`,
    preview: "an electrode in both modes",
    does: "set-property",
    thing: electrode,
    property: "used-in",
    value: "both",
  };
}

/** The best of several electrodes decides; one that is not measured says nothing. */
function judgeResistances(electrodes: readonly Item[], devices: readonly Item[], judge: Judge): Outcome {
  const known = electrodes.flatMap((electrode) => {
    const resistance = judge.quantity(electrode, "resistance");
    return resistance ? [{ electrode, resistance }] : [];
  });
  const best = known.sort((a, b) => a.resistance.value - b.resistance.value)[0];
  if (!best) return judge.unknown(electrodes[0]!, "resistance");
  const { electrode, resistance } = best;
  const limit = electrodeLimit(devices, judge);
  if (resistance.value <= limit.value) return judge.pass(resistance, limit, electrode.id);
  const [has, allowed] = formatApart(resistance, limit);
  return judge.finding({
    what: `${electrode.id} has ${has}; ${allowed} is the most for an island to rely on.`,
    why: "Above it, dry or frozen ground may leave the island without an earth, or a fault at a voltage that harms.",
    todo: "Drive it deeper, or add a second one.",
    spot: { thing: electrode, property: "resistance" },
    value: resistance,
    limit,
    related: [
      ...devices.map((device) => stated(device, "residual-current", judge.need([device, "residual-current"])[0])),
      ...judge.limitSet("electrode-resistance", "the site's own limit"),
    ],
  });
}

function judgeTestPoint(electrode: Item, judge: Judge): Outcome {
  if (judge.needFlag(electrode, "test-point")) return judge.holds(`a test point at ${electrode.id}`);
  return judge.finding({
    severity: "warning",
    what: `${electrode.id} has no test point: it cannot be parted and measured by itself.`,
    why: "Only a reading tells whether the island still has an earth, and beside the supplier's earth it tells nothing.",
    todo: "Fit a link or clamp that can be opened, in a place that can be reached.",
    spot: { thing: electrode, property: "test-point" },
  });
}
