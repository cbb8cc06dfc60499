import type { Terminal } from "../circuit/circuit.js";
import type { Plant } from "../circuit/plant.js";
import { wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { detects, type ResidualType, residualTypeNeeded } from "../physics/residual-current.js";
import { type DeviceBetween, devicesBetween, isResidual } from "./between-sources.js";
import { deviceFixes } from "./device-parts.js";
import { unitName } from "./feeding-units.js";
import { type Judge, NotKnown } from "./judge.js";
import { type Finding, type Missing, type Outcome, type Related, rule } from "./rule.js";
import { eachOf } from "./several.js";

export const rcdType = rule<DeviceBetween>({
  id: "rcd-type",
  section: "A.c. side and the existing board",
  severity: "error",
  title: "An RCD between inverter and supply detects the residual current that the inverter can cause.",
  what: "Looks at the type of every RCD and RCBO that lies between an inverter or generating unit and the supply. An inverter without separation between its d.c. and a.c. sides calls for type B, unless its maker declares otherwise; with separation or that declaration type A is the least. Type AC is never enough.",
  why: "Without separation the array's d.c. may flow through a fault. It magnetises the core of an RCD that is not made for it, which then trips late or not at all, for every circuit behind it.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "712.531.3.5.1, type of RCD with PV inverters", basis: "memory" },
      { title: "BS 7671:2018", clause: "531.3.3, types of RCD", basis: "memory" },
    ],
    iec: [{ title: "IEC 60364-7-712", clause: "712.531.3, type of RCD", basis: "memory" }],
  },
  examples: {
    holds: `part Linnet4 is inverter {
    ac { rated-power: 4.2 kW  max-current: 19.1 A  phases: 1 }
    galvanic-separation: no  dc-residual-current-declared: yes
}
supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S }
board CU is SplitBoard { way 9: rcbo K9 is Rcbo25A serves INV }
inverter INV is Linnet4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `part Rcbo25Ac is rcbo { rated-current: 25 A  curve: B  breaking-capacity: 6 kA  residual-current: 30 mA  type: AC  poles: 2 }
part Linnet4 is inverter {
    ac { rated-power: 4.2 kW  max-current: 19.1 A  phases: 1 }
    galvanic-separation: no  dc-residual-current-declared: yes
}
supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S }
board CU is SplitBoard { way 9: rcbo K9 is Rcbo25Ac serves INV }
inverter INV is Linnet4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
  },
  over: "plant",
  subjects: (plant: Plant) => devicesBetween(plant, isResidual),
  thing: ({ device }) => device,
  judge: ({ device, units }, judge) => {
    const type = judge.needWord(device, "type");
    return eachOf(...units.map((unit) => () => against(device, type, unit, judge)));
  },
});

function against(device: Item, type: string, unit: Terminal, judge: Judge): Outcome {
  const { residualType } = judge.ruleSet.ac;
  if (!mayCauseDirectCurrent(unit, judge)) return judge.notApplicable("a machine that turns causes no d.c.");
  const facts = factsOf(unit, judge);
  const need = residualTypeNeeded(facts, residualType);
  if (!detects(type, residualType.otherwise))
    return finding(device, type, unit, need?.type ?? residualType.otherwise, judge, {
      what: `${device.id} is type ${type}; ${unitName(unit).id} calls for type ${need?.type ?? residualType.otherwise} at least.`,
      why: "It is not made for anything but alternating residual current: with d.c. in it, it trips late or not at all.",
    });
  if (detects(type, "B")) return judge.holds("type B detects all of it");
  if (!need) throw new NotKnown(missingFacts(unit, judge));
  if (detects(type, need.type)) return judge.holds(need.because);
  return finding(device, type, unit, need.type, judge, {
    what: `${device.id} is type ${type}; ${unitName(unit).id} calls for type ${need.type}, because ${need.because}.`,
    why: "Smooth d.c. blinds it: it trips late or not at all, for every circuit behind it.",
  });
}

/** Engines and turbines feed in through a generator that turns; everything else has an inverter in it. */
function mayCauseDirectCurrent({ item }: Terminal, judge: Judge): boolean {
  const source = judge.word(item, "energy-source");
  return source !== "fuel" && source !== "water";
}

function factsOf(unit: Terminal, judge: Judge) {
  const bearer = unitName(unit);
  return {
    // A generating unit states no separation: what its maker declares decides.
    separated: unit.item.kind === "generator" ? false : judge.flag(bearer, "galvanic-separation"),
    declared: judge.flag(bearer, "dc-residual-current-declared"),
  };
}

function missingFacts(unit: Terminal, judge: Judge): Missing[] {
  const bearer = unitName(unit);
  const properties = unit.item.kind === "generator" ? [] : ["galvanic-separation"];
  return [...properties, "dc-residual-current-declared"]
    .filter((property) => !judge.knows(bearer, property))
    .map((property) => ({ thing: bearer, property }));
}

function finding(
  device: Item,
  type: string,
  unit: Terminal,
  needed: ResidualType,
  judge: Judge,
  said: Pick<Finding, "what" | "why">,
): Finding {
  return judge.finding({
    ...said,
    todo: `Fit a device of type ${needed}${needed === "B" ? ", or use an inverter whose maker declares that it needs none" : ""}.`,
    spot: { thing: device, word: "part" },
    related: [
      { spot: { thing: device, property: "type" }, message: `${device.id}, type: ${type}` },
      ...decisive(unit, judge),
    ],
    fixes: (asked) =>
      deviceFixes(asked, {
        device,
        changes: ["type"],
        preview: (part) => {
          const other = wordOf(part, "type");
          return other !== undefined && detects(other, needed) ? `type ${other}` : undefined;
        },
      }),
  });
}

function decisive(unit: Terminal, judge: Judge): Related[] {
  const bearer = unitName(unit);
  return ["galvanic-separation", "dc-residual-current-declared"].flatMap((property) => {
    const flag = judge.flag(bearer, property);
    if (flag === undefined) return [];
    return [{ spot: { thing: bearer, property }, message: `${bearer.id}, ${property}: ${flag ? "yes" : "no"}` }];
  });
}
