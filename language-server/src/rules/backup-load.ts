import type { Source } from "../physics/figure.js";
import { judgeDemand } from "./backup-demand.js";
import { type Island, islandsOf } from "./mains.js";
import { rule } from "./rule.js";

const demand: Source = { title: "sum of the loads that are backed up against the port's rating", basis: "arithmetic" };
const share: Source = { title: "share of loads that run at once, as the design states it", basis: "practice" };

/** An inverter without the grid carries what it backs up. */
export const backupLoad = rule<Island>({
  id: "backup-load",
  section: "Battery and backup",
  severity: "warning",
  title: "A backup port carries the demand that is declared for it.",
  what: "Adds the declared demand of the loads that go on without the grid, each with the share of it that is said to run at once, and holds it against the port's power. Names the ways whose demand nobody declares. Whether what the inverter feeds into a fault operates the breakers of those ways is found by `disconnection`, which looks at every way with the grid and without it.",
  why: "An overloaded port shuts down, and nothing runs that was meant to. It happens in the first power cut, in the evening, when everything is switched on.",
  sources: { gb: [demand, share], iec: [demand, share] },
  examples: {
    holds: `inverter INV is Fell5
board NEW { way 1: rcbo K1 is Rcbo25A serves OVEN }
load OVEN { power: 3 kW }
run W1 from INV.backup to NEW: 2 m of Twin6
`,
    breaks: `inverter INV is Fell5
board NEW { way 1: rcbo K1 is Rcbo32A serves SHOWER }
load SHOWER { power: 7.2 kW }
run W1 from INV.backup to NEW: 2 m of Twin6
`,
  },
  over: "plant",
  subjects: islandsOf,
  thing: ({ inverter }) => inverter,
  judge: judgeDemand,
});
