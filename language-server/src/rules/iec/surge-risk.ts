import { toSi } from "@sunwright/grammar";
import type { Given, Source } from "../../physics/figure.js";
import type { SurgeRisk } from "../ac-rules.js";
import { ruleFigure } from "../rule-set.js";

/** Whether an a.c. side asks for surge protection, by calculated risk level. */
const source: Source = { title: "IEC 60364-4-44:2015", clause: "443.5, calculated risk level", basis: "memory" };

function factor(value: number, where: string): Given {
  return ruleFigure("fenv", value, "number", "", `factor of the surroundings, ${where}`, source);
}

export const surgeRisk: SurgeRisk = {
  environment: new Map([
    ["rural", factor(85, "rural")],
    ["suburban", factor(85, "suburban")],
    ["urban", factor(850, "urban")],
  ]),
  line: {
    kind: "given",
    symbol: "LP",
    value: toSi(1, "km"),
    dimension: "length",
    unit: "km",
    origin: { kind: "assumed", text: "length of the supply line not known: 1 km, the most that counts", source },
  },
  least: ruleFigure("CRLmin", 1000, "number", "", "risk level from which on no device is asked for", source),
};
