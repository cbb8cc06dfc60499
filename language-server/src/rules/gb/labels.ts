import type { Source } from "../../physics/figure.js";
import type { LabelTexts } from "../labels.js";
import { bs7671, pas63100 } from "./sources.js";

/** Texts of labels for the British set, in words of our own. */

const guide: Source = {
  title: "DTI and MCS guides to PV installation",
  clause: "labels of the d.c. side",
  basis: "read",
};
const papers: Source = {
  title: "EREC G98 and G99; IEC 62446-1",
  clause: "diagram, protection settings, contact and shutdown procedure at the origin",
  basis: "memory",
};
const safetyConnection = bs7671("514.13.1");

export const labels: LabelTexts = {
  "multiple-supplies": {
    text: "More than one supply: isolate the mains and the on-site generation before work",
    source: bs7671("514.15.1 and 712.514.101"),
  },
  "live-in-daylight": {
    text: "PV array: live parts inside during daylight",
    source: { title: "DTI and MCS guides; BS 7671:2018", clause: "712.514.102", basis: "read" },
  },
  "dc-isolator": { text: "PV array d.c. isolator", source: guide },
  "ac-isolator": {
    text: "PV system a.c. isolator",
    source: { title: "DTI and MCS guides", clause: "main a.c. isolator", basis: "memory" },
  },
  "isolate-both-sides": {
    text: "Inverter: isolate a.c. and d.c. sides before work",
    source: { title: "BS 7671:2018", clause: "712.514.103 (its number from memory)", basis: "read" },
  },
  "dc-cable": { text: "Solar PV d.c. cable: high voltage, live in daylight", source: guide },
  "dc-connector": {
    text: "Do not disconnect under load",
    source: { title: "IEC 62548 and MCS guide", clause: "accessible d.c. connectors", basis: "read" },
  },
  battery: { text: "Battery energy storage", source: pas63100("signs at the battery and the entrance") },
  "backup-supply": { text: "Stays live when the mains fails: fed by inverter and battery", source: bs7671("514.15") },
  electrode: { text: "Safety electrical connection: do not remove", source: safetyConnection },
  bonding: { text: "Safety electrical connection: do not remove", source: safetyConnection },
  "rcd-test": { text: "Press the test button of each RCD every six months", source: bs7671("514.12.2") },
  "surge-protection": {
    text: "Surge protection: read the indicator; disconnect for insulation tests",
    source: bs7671("534.4 and 643.3.3"),
  },
  "solar-and-battery-sign": {
    text: "Solar panels, and a battery where there is one, in this building",
    source: pas63100("signs at the battery and the entrance"),
  },
  "circuit-diagram": { text: "Circuit diagram of the generating installation", source: papers },
  "shutdown-procedure": { text: "How to shut down the generating installation", source: papers },
};
