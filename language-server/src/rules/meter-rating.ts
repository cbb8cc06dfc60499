import type { Plant, TransformerView } from "../circuit/plant.js";
import { flagOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { formatApart } from "../physics/working.js";
import { transformerComparisons } from "./current-transformer.js";
import { unitName, unitsThrough } from "./feeding-units.js";
import type { Judge } from "./judge.js";
import { strongerAcParts } from "./part-fixes-ac.js";
import { type PassedDevice, passedDevices } from "./passed-devices.js";
import { idsOf, stated } from "./phrases.js";
import { type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";
import { currentThrough, takesPower } from "./through-current.js";

/** A meter in the line, or a current transformer around one. */
export type MeterSubject =
  | { readonly plant: Plant; readonly meter: PassedDevice }
  | { readonly plant: Plant; readonly transformer: TransformerView };

function* subjects(plant: Plant): Generator<MeterSubject> {
  for (const meter of passedDevices(plant, ({ kind }) => kind === "meter")) yield { plant, meter };
  for (const transformer of plant.transformers) yield { plant, transformer };
}

export const meterRating = rule<MeterSubject>({
  id: "meter-rating",
  section: "A.c. side and the existing board",
  severity: "error",
  title: "Meters carry what passes them, and meters and current transformers see what they are there for.",
  what: "Holds the rated current of each meter against what may pass it either way: what inverters send and draw, or what the protective device ahead lets through. A generation meter on the grid port of an inverter with a battery is a note: it counts what the battery gives back too. A current transformer is looked at for what the supply feeds without passing it, for its arrow, and for its rated current.",
  why: "An overloaded meter burns at its terminals. A current transformer behind a branch, or the wrong way round, makes the inverter take import for export: the battery then charges from the grid or does not charge at all.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "512.1.2, equipment suited to the current it carries", basis: "memory" },
      { title: "what installers report of misplaced current transformers", basis: "practice" },
    ],
    iec: [
      { title: "IEC 60364-5-51", clause: "512.1.2, equipment suited to the current it carries", basis: "memory" },
      { title: "what installers report of misplaced current transformers", basis: "practice" },
    ],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  service-fuse: 80 A }
board CU is SplitBoard {
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
meter M1 is GenMeter1ph
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to M1: 10 m of Twin6
run W3 from M1 to INV.ac: 0.6 m of Twin6
`,
    breaks: `part GenMeter15 is meter { rated-current: 15 A  measures: generation  phases: 1 }
supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  service-fuse: 80 A }
board CU is SplitBoard {
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
meter M1 is GenMeter15
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to M1: 10 m of Twin6
run W3 from M1 to INV.ac: 0.6 m of Twin6
`,
  },
  over: "plant",
  subjects,
  thing: (subject) => ("meter" in subject ? subject.meter.device : subject.transformer.transformer),
  judge: (subject, judge) => {
    const { plant } = subject;
    if ("transformer" in subject) return eachOf(...transformerComparisons(subject.transformer, plant, judge));
    const { meter } = subject;
    const isAsFound = flagOf(meter.device, "existing") === true && unitsThrough(meter.tree, meter.after).length === 0;
    if (isAsFound) return judge.notApplicable("it was there before, and nothing new passes it");
    return eachOf(
      () => carries(meter, judge),
      () => counts(meter, plant, judge),
    );
  },
});

function carries({ device, tree, after }: PassedDevice, judge: Judge): Outcome[] {
  const [rated] = judge.need([device, "rated-current"]);
  const { current, unknown } = currentThrough(tree, after, judge);
  if (!current) return unknown.length > 0 ? [...unknown] : [judge.notApplicable("nothing lies beyond it")];
  if (current.value <= rated.value) return [judge.pass(current, rated, "current"), ...unknown];
  const [flows, stands] = formatApart(current, rated);
  return [
    judge.finding({
      what: `${device.id} is rated ${stands}; ${flows} may pass it.`,
      why: "Above its rated current its terminals overheat.",
      todo: "Use a meter that is rated for more, or one with current transformers.",
      spot: { thing: device, word: "part" },
      value: current,
      limit: rated,
      related: [stated(device, "rated-current", rated)],
      fixes: (asked) => strongerAcParts(asked, device, "rated-current", current, ["phases", "measures"]),
    }),
  ];
}

/** A meter between the supply and an inverter with a battery cannot tell the sun from what was stored. */
function counts({ device, tree, after }: PassedDevice, plant: Plant, judge: Judge): Outcome | undefined {
  if (takesPower(tree, after)) return undefined;
  const inverters = new Set(unitsThrough(tree, after).map(unitName));
  const storing = plant.inverters.filter(
    ({ inverter, storage }) => inverters.has(inverter) && storage && storage.batteries.length > 0,
  );
  if (storing.length === 0) return undefined;
  const word = judge.needWord(device, "measures");
  if (word !== "generation") return judge.holds(`it is not taken to count generation (${word})`);
  const batteries: Item[] = storing.flatMap(({ storage }) => storage?.batteries ?? []);
  return judge.finding({
    severity: "note",
    what: `${device.id} is there to count generation; it also counts what ${idsOf(batteries)} gives back through ${idsOf(storing.map(({ inverter }) => inverter))}.`,
    why: "What was bought, stored and given back then looks like what the sun gave.",
    todo: "Name it for what it counts, and ask what the tariff wants to be counted.",
    spot: { thing: device, property: "measures" },
    related: [{ spot: { thing: device, property: "measures" }, message: `${device.id}, measures: generation` }],
    fixes: () => [
      {
        title: `Say that ${device.id} measures import-and-export`,
        preview: "counts what passes it either way",
        does: "set-property",
        thing: device,
        property: "measures",
        value: "import-and-export",
      },
    ],
  });
}
