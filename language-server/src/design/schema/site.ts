import { labels, location, note } from "./common.js";
import { limitProperties } from "./limits.js";
import { count, day, flag, type KindRow, quantity, text, words } from "./row.js";
import { settingRows } from "./settings.js";

export const siteKinds: readonly KindRow[] = [
  {
    kind: "site",
    title: "site",
    help: "The installation as a whole: which rules it is checked against, and the temperatures it must stand.",
    declaredAs: "block",
    terminals: [],
    properties: [
      words("rules", ["gb", "iec"], "Rule set: gb for BS 7671 and its companions, iec for IEC 60364 and IEC 62548.", {
        essential: true,
        assumed: { text: "iec", reason: "no national rule set was named" },
      }),
      quantity(
        "lowest-temperature",
        "temperature",
        "Lowest expected air temperature; cells at dawn are as cold as the air. Say in a comment where it comes from.",
        { symbol: "Tmin", typical: "-10 degC", essential: true },
      ),
      words(
        "lowest-temperature-basis",
        settingRows.lowestTemperatureBasis.words,
        "Which sort of figure that is: the lowest ever recorded, or a yearly minimum of statistics.",
        { typical: "record-low" },
      ),
      quantity("highest-temperature", "temperature", "Highest expected air temperature.", {
        symbol: "Tmax",
        typical: "35 degC",
        essential: true,
      }),
      quantity("ground-flash-density", "flash-density", "Lightning ground flash density Ng of the place.", {
        symbol: "Ng",
        typical: "0.5 /km2/yr",
        essential: true,
      }),
      words(
        "building",
        ["dwelling", "other-building", "ground-mounted"],
        "What carries the array; some limits differ.",
        { assumed: { text: "dwelling", reason: "the usual retrofit, and the stricter limit" } },
      ),
      words(
        "lightning-protection",
        ["none", "separated", "not-separated"],
        "External lightning protection system (LPS), and whether the array keeps its separation distance.",
        { typical: "none" },
      ),
      words("surroundings", ["rural", "suburban", "urban"], "What lies around; it decides how likely surges are.", {
        typical: "suburban",
      }),
      text("address", "Printed on the papers.", { checked: "never" }),
      text("designer", "Who answers for the design.", { checked: "never" }),
      text("revision", "Revision printed on every paper.", { typical: '"C"', checked: "never" }),
      day("date", "Date of this revision."),
      words(
        "status",
        ["draft", "for-review", "issued", "as-built"],
        "How far it is; what is as-built has its labels and readings recorded.",
        {
          typical: "draft",
        },
      ),
      note,
    ],
  },
  {
    kind: "limits",
    title: "limits",
    help: "Limits of the rule set, and choices on which practitioners differ, that this site sets for itself. Each is printed with the results.",
    within: ["site"],
    declaredAs: "block",
    terminals: [],
    properties: limitProperties,
  },
  {
    kind: "supply",
    title: "supply",
    help: "The public supply at the origin of the installation.",
    declaredAs: "item",
    terminals: ["out"],
    source: "grid",
    properties: [
      quantity("voltage", "voltage", "Nominal voltage to earth.", { symbol: "U0", typical: "230 V", essential: true }),
      quantity("measured-voltage", "voltage", "Voltage as found.", { symbol: "U", typical: "246 V" }),
      count("phases", "1 or 3.", { typical: "1", essential: true }),
      words("earthing", ["TN-C-S", "TN-S", "TT", "IT"], "Earthing arrangement of the supply.", { essential: true }),
      quantity("service-fuse", "current", "Rating of the supplier's cut-out fuse.", {
        symbol: "In",
        typical: "80 A",
        essential: true,
      }),
      quantity("external-loop-impedance", "resistance", "External earth fault loop impedance.", {
        symbol: "Ze",
        typical: "0.24 ohm",
        essential: true,
      }),
      quantity("prospective-fault-current", "current", "Prospective fault current at the origin.", {
        symbol: "Ipf",
        typical: "1.9 kA",
        essential: true,
      }),
      quantity(
        "line-neutral-impedance",
        "resistance",
        "Impedance of the supply loop between line and neutral, which the voltage rises over.",
        { symbol: "ZL-N", typical: "0.25 ohm" },
      ),
      flag("overhead", "The supply arrives by an overhead line.", { typical: "no" }),
      words(
        "grid-route",
        ["connect-and-notify", "apply-first"],
        "Which of the distributor's two ways this installation takes.",
        { typical: "apply-first", essential: true },
      ),
      quantity("export-limit", "power", "Power that may be exported, where it is limited by agreement.", {
        symbol: "Pexp",
        typical: "3.68 kW",
      }),
      flag("export-limit-accepted", "The distributor has accepted that limit in writing.", { typical: "yes" }),
      flag("several-premises", "The same installer fits units at several premises close by.", {
        assumed: { text: "no", reason: "one installation at a time is the usual job" },
      }),
      text("supply-number", "Number of the supply, as on the bill.", { checked: "never" }),
      text("surge-risk-declined", "The owner's recorded reason for going without surge protection on the a.c. side."),
      labels,
      location,
      note,
    ],
  },
];
