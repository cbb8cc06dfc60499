import type { Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import { judgeSize, leastMainBonding, leastMainEarthing } from "./earthing-conductors.js";
import { judgeBattery, judgeInverter, judgeSurgeDevice } from "./equipment-earth.js";
import type { Judge } from "./judge.js";
import { hasMains } from "./mains.js";
import { type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";

const british: readonly Source[] = [
  { title: "BS 7671:2018", clause: "Table 54.7, protective conductors by line conductor", basis: "read" },
  {
    title: "BS 7671:2018",
    clause: "Table 54.8 and 544.1.1, main bonding; 542.3.1, earthing conductors",
    basis: "memory",
  },
];
const international: readonly Source[] = [
  { title: "IEC 60364-5-54", clause: "Table 54.2, 542.3.1 and 544.1", basis: "memory" },
  { title: "IEC 62548-1", clause: "bonding conductors of an array's frame", basis: "memory" },
];

/** Something that has a conductor to earth, with how it is judged. */
interface Subject {
  readonly thing: Item;
  readonly judge: (judge: Judge) => Outcome | readonly Outcome[];
}

/** Every conductor to earth is as large as the tables ask. */
export const earthingSizes = rule<Subject>({
  id: "earthing-sizes",
  section: "Earthing, grid, papers",
  severity: "error",
  title: "Earthing, bonding and protective conductors are at least as large as the rule set's tables ask.",
  what: "Holds the main earthing conductor against the table by the supply's line conductors, main bonding against the supply's neutral where PME conditions hold and against half the earthing conductor elsewhere, the conductor to each electrode, the frame's bonding conductor, and the protective conductor of each inverter and battery. Says where an inverter, a battery or a surge protective device has none; `0 mm2` says that there is none.",
  why: "These conductors carry nothing for years and then everything at once. One that is missing or melts leaves cases live, and nothing shows it until somebody is hurt.",
  sources: { gb: british, iec: international },
  examples: {
    holds: `supply GRID { earthing: TN-C-S }
board CU is SplitBoard { isolator MS is MainSwitch100 }
run W1 from GRID to CU: 3 m of Tails25
earthing { main-conductor: 16 mm2  main-bonding: 10 mm2  supply-neutral: 25 mm2 }
`,
    breaks: `supply GRID { earthing: TN-C-S }
board CU is SplitBoard { isolator MS is MainSwitch100 }
run W1 from GRID to CU: 3 m of Tails25
earthing { main-conductor: 6 mm2  main-bonding: 10 mm2  supply-neutral: 25 mm2 }
`,
  },
  over: "plant",
  subjects: subjectsOf,
  thing: ({ thing }) => thing,
  judge: (subject, judge) => subject.judge(judge),
});

function* subjectsOf(plant: Plant): Generator<Subject> {
  if (!hasMains(plant)) return;
  const { earthing, supplies, electrodes, inverters, batteries, surge } = plant;
  const [supply] = supplies;
  if (supply && !earthing)
    yield {
      thing: supply,
      judge: (judge) => judge.notChecked("there is no earthing block: its conductors are not known"),
    };
  if (earthing) yield { thing: earthing, judge: (judge) => judgeBlock(plant, earthing, supply, judge) };
  for (const electrode of electrodes) yield { thing: electrode, judge: (judge) => judgeElectrode(electrode, judge) };
  for (const { inverter } of inverters)
    yield { thing: inverter, judge: (judge) => judgeInverter(plant, inverter, judge) };
  for (const { battery, port } of batteries)
    yield { thing: battery, judge: (judge) => judgeBattery(plant, battery, port, judge) };
  for (const { spd } of surge) yield { thing: spd, judge: (judge) => judgeSurgeDevice(spd, judge) };
}

function judgeBlock(plant: Plant, earthing: Item, supply: Item | undefined, judge: Judge): Outcome[] {
  if (!supply) return [judge.notChecked("no supply is described that would size the main conductors")];
  return eachOf(
    () => {
      const { least, related } = leastMainEarthing(plant, supply, judge);
      return judgeSize(mainEarthing(earthing), least, related, judge);
    },
    () => {
      const { least, related } = leastMainBonding(plant, earthing, supply, judge);
      return judgeSize(mainBonding(earthing), least, related, judge);
    },
    () => judgeFrame(earthing, judge),
  );
}

const mainEarthing = (thing: Item) => ({
  thing,
  property: "main-conductor",
  name: "the main earthing conductor",
  why: "It carries every earth fault of the installation.",
  adiabatic: true,
});
const mainBonding = (thing: Item) => ({
  thing,
  property: "main-bonding",
  name: "main bonding",
  why: "Pipes and steel can otherwise carry a voltage into the house, and where PME conditions hold the neutral's current too.",
});

function judgeFrame(earthing: Item, judge: Judge): Outcome | undefined {
  if (judge.word(earthing, "frame-bonding") !== "bonded") return undefined;
  const isStruck = judge.needSiteWord("lightning-protection") === "not-separated";
  const name = isStruck ? "frame-bonding-conductor-lightning" : "frame-bonding-conductor";
  const question = {
    thing: earthing,
    property: "frame-conductor",
    name: "the frame's bonding conductor",
    why: isStruck ? "It carries part of a lightning current." : "Wind and work on the roof break a thin one.",
  };
  return judgeSize(question, judge.limit(name), judge.limitSet(name, "the site's own limit"), judge);
}

function judgeElectrode(electrode: Item, judge: Judge): Outcome {
  const question = {
    thing: electrode,
    property: "conductor",
    name: `the earthing conductor to ${electrode.id}`,
    why: "It must outlast corrosion and work in the garden.",
  };
  return judgeSize(question, judge.ruleSet.ac.protectiveSizes.toElectrode, [], judge);
}
