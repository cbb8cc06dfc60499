import { existing, labels, note, phase, phases } from "./common.js";
import { count, day, flag, type KindRow, quantity, text, words } from "./row.js";

/** How a run is laid. The names are plain words; each rule set says which table column they stand for. */
export const methods = [
  "free-in-air",
  "on-surface",
  "touching-on-surface",
  "conduit-in-air",
  "conduit-in-insulated-wall",
  "clipped-direct",
  "trunking",
  "tray",
  "in-insulation",
  "buried",
] as const;

/** Properties of a run between its braces; its ends, length and cable are in its sentence. */
export const runRow: KindRow = {
  kind: "run",
  title: "run",
  help: "A cable laid from one terminal to another: `run W1 from S1 to Q1: 18 m of Solar4`. The length is one way; both conductors are counted.",
  declaredAs: "item",
  terminals: [],
  properties: [
    words("method", methods, "How the run is laid; decides how well it sheds heat.", {
      typical: "conduit-in-air",
      essential: true,
    }),
    quantity(
      "ambient",
      "temperature",
      "Air temperature around the run: a loft or the back of a roof is hotter than the site.",
      { symbol: "Ta", typical: "45 degC", essential: true },
    ),
    count("grouped-circuits", "Circuits that run together and warm each other, this one included.", {
      symbol: "Ng",
      typical: "1",
      assumed: { text: "1", reason: "no other circuit was said to run with it" },
    }),
    words("place", ["indoors", "outdoors", "loft", "underground"], "Where it runs.", { typical: "outdoors" }),
    text("route", "The path it shares with other runs: runs of one route are one length to lightning.", {
      typical: '"east riser"',
    }),
    flag("conductors-together", "Positive and negative run side by side, so that the loop stays small.", {
      typical: "yes",
      checked: "not-yet",
    }),
    text("start-connector", "Make and type of the plug-and-socket half at the `from` end of this run.", {
      typical: '"Bayonet P4"',
    }),
    text("end-connector", "Make and type of the half at the `to` end of this run."),
    quantity("connector-rated-voltage", "voltage", "Rated d.c. voltage of the connectors at its ends.", {
      symbol: "Ucon",
      typical: "1500 V",
    }),
    words(
      "thermal-insulation",
      ["none", "one-side", "surrounded"],
      "How thermal insulation of the building touches it.",
      {
        typical: "none",
      },
    ),
    quantity("surrounded-length", "length", "Length of it that thermal insulation surrounds.", { typical: "100 mm" }),
    quantity("protective-conductor-area", "area", "Protective conductor laid with it, where the cable has none.", {
      symbol: "Spe",
      typical: "4 mm2",
    }),
    flag("concealed", "In a wall at less than 50 mm depth, without earthed metal around it.", {
      typical: "no",
      checked: "not-yet",
    }),
    phases,
    phase,
    existing,
    labels,
    note,
  ],
};

export const readingRow: KindRow = {
  kind: "measured",
  title: "reading",
  help: "What was measured on site, compared with what the design expects at that irradiance and temperature.",
  declaredAs: "block",
  terminals: [],
  properties: [
    quantity("open-circuit-voltage", "voltage", "Open-circuit voltage as read.", {
      symbol: "Uoc,read",
      typical: "402 V",
      sign: "either",
    }),
    quantity("short-circuit-current", "current", "Short-circuit current as read.", {
      symbol: "Isc,read",
      typical: "9.1 A",
      sign: "either",
    }),
    quantity("irradiance", "irradiance", "Irradiance in the plane of the modules at that moment.", {
      symbol: "G",
      typical: "640 W/m2",
    }),
    quantity("cell-temperature", "temperature", "Cell temperature at that moment.", {
      symbol: "Tc",
      typical: "28 degC",
    }),
    quantity("insulation-resistance", "resistance", "Insulation resistance to earth.", {
      symbol: "Riso",
      typical: "550 Mohm",
    }),
    quantity("insulation-test-voltage", "voltage", "Test voltage used for it.", { symbol: "Utest", typical: "1000 V" }),
    words("polarity", ["correct", "reversed"], "Polarity as found."),
    quantity("loop-impedance", "resistance", "Earth fault loop impedance as read.", { symbol: "Zs" }),
    quantity("fault-current", "current", "Prospective fault current as read.", { symbol: "Ipf", typical: "1.6 kA" }),
    quantity("voltage", "voltage", "Line-to-neutral voltage as read.", { symbol: "U", typical: "246 V" }),
    quantity("electrode-resistance", "resistance", "Earth electrode resistance as read.", {
      symbol: "RA",
      typical: "48 ohm",
    }),
    quantity("residual-trip-time", "time", "Disconnection time of the RCD at its rated residual current.", {
      typical: "28 ms",
    }),
    quantity("earth-leakage", "current", "Protective conductor current as read.", {
      symbol: "IPE",
      typical: "4 mA",
      checked: "not-yet",
    }),
    words("mode", ["grid", "island"], "In which mode it was read.", { typical: "grid" }),
    text("instrument", "Instrument and serial number.", { checked: "never" }),
    text("by", "Who measured.", { checked: "never" }),
    note,
  ],
};
export const departureRow: KindRow = {
  kind: "departure",
  title: "departure",
  help: "A rule departed from on purpose, in writing. The finding becomes a note and stays in every output.",
  declaredAs: "block",
  terminals: [],
  properties: [
    text("by", "Who decided.", { checked: "never" }),
    day("until", "Day until which it is agreed; a site with a later date is warned that nobody has decided it again."),
    note,
  ],
};
