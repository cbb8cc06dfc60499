import type { SettingKey } from "../../design/schema/settings.js";
import type { Source } from "../../physics/figure.js";
import type { Setting } from "../rule-set.js";

/** Choices on which practitioners differ. The default is the stricter wherever one is, and the reason says so. */
const differ: Source = { title: "practice of designers and inspectors, who differ", basis: "practice" };
const generators: Source = { title: "BS 7671:2018 and IEC 60364-5-55", clause: "551.7.1", basis: "memory" };

export const settings: Readonly<Record<SettingKey, Setting>> = {
  rcdSide: {
    word: "own-rcd",
    source: generators,
    reason: "a generator goes on feeding a fault after a shared RCD has opened; behind one of its own it stops with it",
  },
  singlePoleRcbo: {
    word: "finding",
    source: differ,
    reason: "while the inverter runs its neutral is live too; inspectors have coded it, others see no requirement",
  },
  frameBonding: {
    word: "record-decision",
    source: differ,
    reason: "whether to bond depends on the array's class, its reach, lightning protection and the supply's earthing",
  },
  dcIsolator: {
    word: "built-in-accepted",
    source: differ,
    reason: "a switch inside the inverter isolates it as well, and every further enclosure is a place for water",
  },
  lowestTemperatureBasis: {
    word: "record-low",
    source: differ,
    reason: "the higher voltage of the two: an inverter that is destroyed once is not mended by statistics",
  },
};
