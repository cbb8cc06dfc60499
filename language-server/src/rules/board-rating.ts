import { type JoinedPart, joinedParts } from "./board-parts.js";
import { joinedComparison } from "./board-sum.js";
import { rule } from "./rule.js";

export const boardRating = rule<JoinedPart>({
  id: "board-rating",
  section: "A.c. side and the existing board",
  severity: "error",
  title: "Bar, main switch and tails carry what the supply and the generators can put through them together.",
  what: "Adds what inverters and generating units feed in to the rating of the device that limits the supply: for the bar of each board on which both meet, and for main switches and tails between the joint and the loads. A part that lies in series between the supply and the joint carries either what the supply delivers or what the generators send, whichever is more.",
  why: "The supplier's fuse only sees what comes from the supply. With a generator on the same bar the loads may draw the sum of both, and nothing opens when that is more than the bar was built for.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "551.7.2 and 536.4.202, InA ≥ In + Ig", basis: "memory" },
      {
        title: "IET Wiring Matters 103",
        clause: "microgeneration and the rated current of a consumer unit",
        basis: "read",
      },
    ],
    iec: [{ title: "IEC 60364-5-55", clause: "551.7.2, ratings where generators run in parallel", basis: "memory" }],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  service-fuse: 80 A }
board CU is SplitBoard {
    isolator MS is MainSwitch100
    way 1: breaker K1 is Breaker32B serves "sockets"
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25 { method: clipped-direct  ambient: 30 degC }
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  service-fuse: 100 A }
board CU is SplitBoard {
    isolator MS is MainSwitch100
    way 1: breaker K1 is Breaker32B serves "sockets"
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25 { method: clipped-direct  ambient: 30 degC }
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
  },
  over: "plant",
  subjects: joinedParts,
  thing: ({ thing }) => thing,
  judge: joinedComparison,
});
