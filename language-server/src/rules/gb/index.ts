import { cellRise, cold, fuse62548, insulationTest, insulationVoltageFactor } from "../iec/photovoltaic.js";
import { settings } from "../iec/settings.js";
import { criticalLengthConstants, impulseWithstand } from "../iec/surge.js";
import { type RuleSet, ruleSet } from "../rule-set.js";
import { ac } from "./ac.js";
import { ampacity, grouping } from "./ampacity.js";
import { labels } from "./labels.js";
import { limits } from "./limits.js";

export const gb: RuleSet = ruleSet({
  id: "gb",
  title: "BS 7671 and its companions",
  editions: [
    {
      title: "BS 7671",
      edition: "2018 with Amendment 4:2026",
      source: {
        title: "BS 7671:2018+A4:2026",
        clause: "published 15 April 2026; the edition before it is withdrawn on 15 October 2026",
        basis: "read",
      },
    },
    {
      title: "EREC G98, G99 and G100",
      edition: "as the distributor applies them; of G100, issue 2 amendment 1 of 2022",
      source: { title: "EREC G100", clause: "issue 2 amendment 1, mandatory from 1 May 2023", basis: "read" },
    },
    {
      title: "PAS 63100",
      edition: "2024",
      source: { title: "PAS 63100:2024", clause: "a specification, not a statute", basis: "read" },
    },
    { title: "IEC 62548-1", edition: "2023", source: { title: "IEC 62548-1:2023", basis: "memory" } },
    {
      title: "EN 62446-1",
      edition: "2016 with Amendment 1:2018",
      source: { title: "IEC 62446-1:2016", basis: "memory" },
    },
  ],
  limits,
  settings,
  coldFactors: cold,
  stringFuse: {
    ...fuse62548,
    reason:
      "UK guides use this window; it is stricter in every respect than the form of regulation 712.431, which is known from memory only.",
  },
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
