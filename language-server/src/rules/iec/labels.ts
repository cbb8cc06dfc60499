import { labels as british } from "../gb/labels.js";
import { askedBy, type LabelTexts } from "../labels.js";
import { practice } from "./sources.js";

/** Texts of labels for the international set: the words are those of the British one, who asks for them differs. */

const international = askedBy(british, {
  title: "IEC 60364-7-712 and IEC 62548-1",
  clause: "712.514 and marking, labels of arrays and of installations with several supplies",
  basis: "memory",
});
const papers = { title: "IEC 62446-1", clause: "diagram and shutdown procedure on site", basis: "memory" } as const;

export const labels: LabelTexts = {
  ...international,
  battery: { ...british.battery, source: { ...practice, clause: "signs at batteries" } },
  "rcd-test": { ...british["rcd-test"], source: { ...practice, clause: "makers' advice for test buttons" } },
  "solar-and-battery-sign": {
    ...british["solar-and-battery-sign"],
    source: { ...practice, clause: "signs for the fire service" },
  },
  "circuit-diagram": { ...british["circuit-diagram"], source: papers },
  "shutdown-procedure": { ...british["shutdown-procedure"], source: papers },
};
