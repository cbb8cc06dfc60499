import { type RuleSet, ruleSet } from "../rule-set.js";
import { ac } from "./ac.js";
import { ampacity, grouping } from "./ampacity.js";
import { labels } from "./labels.js";
import { limits } from "./limits.js";
import { cellRise, cold, fuse62548, insulationTest, insulationVoltageFactor } from "./photovoltaic.js";
import { settings } from "./settings.js";
import { criticalLengthConstants, impulseWithstand } from "./surge.js";

export const iec: RuleSet = ruleSet({
  id: "iec",
  title: "IEC 60364 and IEC 62548",
  editions: [
    {
      title: "IEC 60364-7-712",
      edition: "2025, third edition",
      source: { title: "IEC 60364-7-712:2025", clause: "catalogue entry", basis: "read" },
    },
    { title: "IEC 62548-1", edition: "2023", source: { title: "IEC 62548-1:2023", basis: "memory" } },
    {
      title: "IEC 62446-1",
      edition: "2016 with Amendment 1:2018",
      source: { title: "IEC 62446-1:2016", basis: "memory" },
    },
  ],
  limits,
  settings,
  coldFactors: cold,
  stringFuse: fuse62548,
  criticalLengthConstants,
  impulseWithstand,
  cellRise,
  ampacity,
  grouping,
  insulationTest,
  insulationVoltageFactor,
  ac,
  labels,
});
