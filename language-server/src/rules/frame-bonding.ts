import type { Installation } from "../circuit/installation.js";
import type { Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import type { ChosenWord, Judge } from "./judge.js";
import { hasMains } from "./mains.js";
import { type Finding, type Fix, type Outcome, type Related, rule } from "./rule.js";
import { eachOf } from "./several.js";

const british: readonly Source[] = [
  {
    title: "BS 7671:2018",
    clause: "411.3.1.2 and 544, whether a frame is an extraneous-conductive-part",
    basis: "memory",
  },
  {
    title: "IET code of practice for grid-connected solar PV",
    clause: "decision tree for earthing of frames",
    basis: "memory",
  },
];
const international: readonly Source[] = [
  {
    title: "IEC 62548-1",
    clause: "earthing and bonding of array frames, decision by class and lightning",
    basis: "memory",
  },
  { title: "IEC 60364-7-712", clause: "712.54", basis: "memory" },
];

type Decision = "bonded" | "not-bonded";

interface Subject {
  readonly plant: Plant;
  /** Where the decision is recorded, or would be missed first. */
  readonly thing: Item;
  readonly earthing?: Item;
}

/** Whether the array's frame is bonded is decided, in writing, and fits what is known of the place. */
export const frameBonding = rule<Subject>({
  id: "frame-bonding",
  section: "Earthing, grid, papers",
  severity: "warning",
  title: "Whether the array's frame is bonded is decided and recorded, and the decision fits the place.",
  what: "Asks for the decision on the frame with its reason. An unbonded frame is held against a lightning protection system that is not kept apart and against modules that are not class II; a bonded one against a TN-C-S supply where somebody standing on the ground can touch it. A site's limits may demand bonding always, or never.",
  why: "Practitioners differ, and both choices have their dangers: an unbonded frame may take on a voltage, a bonded one carries the voltage of a lost neutral to whoever touches it from the garden. Whoever works there next has to know what was meant.",
  sources: { gb: british, iec: international },
  examples: {
    holds: `supply GRID { earthing: TN-C-S }
string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
run W2 from INV.ac to GRID: 5 m of Twin6
earthing {
    frame-bonding: not-bonded
    frame-bonding-reason: "class II throughout, out of reach, no lightning protection"
    array-double-insulated: yes
}
`,
    breaks: `supply GRID { earthing: TN-C-S }
string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
run W2 from INV.ac to GRID: 5 m of Twin6
earthing { main-conductor: 16 mm2 }
`,
  },
  over: "installation",
  subjects: subjectsOf,
  thing: ({ thing }) => thing,
  judge(subject, judge) {
    const { earthing } = subject;
    const decided = earthing && judge.word(earthing, "frame-bonding");
    const setting = judge.setting("frame-bonding");
    const wanted = wantedBy(setting);
    if (!earthing || decided === undefined) return judge.finding(undecided(subject, wanted));
    if (wanted) return againstSetting(earthing, decided as Decision, wanted, setting, judge);
    return eachOf(
      () => judge.holds(`${decided}: ${judge.needText(earthing, "frame-bonding-reason")}`),
      ...(decided === "bonded"
        ? [() => ofLostNeutral(subject, earthing, judge)]
        : [() => ofLightning(earthing, judge), () => ofClass(earthing, judge)]),
    );
  },
});

/** One for each plant that has an array and an a.c. side. */
function* subjectsOf({ plants, zones }: Installation): Generator<Subject> {
  const mains = plants.filter(hasMains);
  if (mains.length === 0) return;
  const withArray = new Set(
    zones.flatMap(({ inverter, arrays }) =>
      inverter && arrays.some(({ strings }) => strings.length > 0) ? [inverter] : [],
    ),
  );
  for (const plant of mains) {
    const inverter = plant.inverters.find((view) => withArray.has(view.inverter))?.inverter;
    if (!inverter) continue;
    const { earthing, supplies } = plant;
    yield { plant, earthing, thing: earthing ?? supplies[0] ?? inverter };
  }
}

function wantedBy({ word }: ChosenWord): Decision | undefined {
  if (word === "required") return "bonded";
  return word === "not-allowed" ? "not-bonded" : undefined;
}

function undecided({ thing, earthing }: Subject, wanted: Decision | undefined): Omit<Finding, "outcome"> {
  return {
    what: "Whether the array's frame is bonded is not recorded.",
    why: "Both choices have their dangers, and whoever works there next has to know what was meant.",
    todo: "Decide, and state frame-bonding with its reason in the earthing block.",
    spot: { thing, word: "name" },
    fixes: () => (earthing && wanted ? [decide(earthing, wanted)] : []),
  };
}

function againstSetting(
  earthing: Item,
  decided: Decision,
  wanted: Decision,
  { origin }: ChosenWord,
  judge: Judge,
): Outcome {
  if (decided === wanted) return judge.holds(`${decided}, as ${origin.text}`);
  return judge.finding({
    what: `The array's frame is ${decided}; this site asks for ${wanted} (${origin.text}).`,
    why: "Frames that are earthed in one way here and in another there take the next person by surprise.",
    todo: `Make it ${wanted}, or change the choice in the site's limits.`,
    spot: { thing: earthing, property: "frame-bonding" },
    fixes: () => [decide(earthing, wanted)],
  });
}

function ofLightning(earthing: Item, judge: Judge): Outcome {
  const word = judge.needSiteWord("lightning-protection");
  if (word !== "not-separated") return judge.holds(`lightning protection: ${word}`);
  const related: Related[] = judge.site
    ? [{ spot: { thing: judge.site, property: "lightning-protection" }, message: `lightning protection: ${word}` }]
    : [];
  return judge.finding({
    what: "The array's frame is not bonded, and the lightning protection system is not kept apart from it.",
    why: "A stroke jumps from the air terminals to the frame and into the cables below it.",
    todo: "Bond the frame to the lightning protection system, or keep the separation distance.",
    spot: { thing: earthing, property: "frame-bonding" },
    related,
    fixes: () => [decide(earthing, "bonded")],
  });
}

function ofClass(earthing: Item, judge: Judge): Outcome {
  if (judge.needFlag(earthing, "array-double-insulated")) return judge.holds("class II throughout");
  return judge.finding({
    what: "The array's frame is not bonded, and the array is not class II throughout.",
    why: "A fault of single insulation makes the frame live.",
    todo: "Bond the frame, or use class II modules, cables and connectors throughout.",
    spot: { thing: earthing, property: "frame-bonding" },
    related: [{ spot: { thing: earthing, property: "array-double-insulated" }, message: "not class II throughout" }],
    fixes: () => [decide(earthing, "bonded")],
  });
}

/** A bonded frame has the voltage of the supply's neutral, whatever happens to it. */
function ofLostNeutral({ plant }: Subject, earthing: Item, judge: Judge): Outcome {
  const [supply] = plant.supplies;
  if (!supply) return judge.holds("no supply whose neutral could be lost");
  const system = judge.needWord(supply, "earthing");
  if (system !== "TN-C-S") return judge.holds(`${system} supply`);
  if (!judge.needFlag(earthing, "frame-within-reach")) return judge.holds("out of reach from the ground");
  return judge.finding({
    what: `The array's frame is bonded to the earth of ${supply.id} (TN-C-S), and can be touched from the ground.`,
    why: "If the supply's neutral breaks, the frame takes its voltage, and whoever stands on the ground carries it.",
    todo: "Leave the frame unbonded if it is class II throughout, give it an electrode of its own, or put it out of reach.",
    spot: { thing: earthing, property: "frame-bonding" },
    related: [
      { spot: { thing: supply, property: "earthing" }, message: `${supply.id}, earthing: TN-C-S` },
      { spot: { thing: earthing, property: "frame-within-reach" }, message: "within reach" },
    ],
    fixes: () => [decide(earthing, "not-bonded")],
  });
}

function decide(earthing: Item, decision: Decision): Fix {
  return {
    title: `Record the frame as ${decision}`,
    preview: `frame-bonding: ${decision}`,
    does: "set-property",
    thing: earthing,
    property: "frame-bonding",
    value: decision,
  };
}
