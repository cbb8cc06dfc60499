import { existing, labels, location, maker, note } from "./common.js";
import { dcDeviceKinds } from "./dc-devices.js";
import { inverterKinds } from "./inverter.js";
import { count, type KindRow, quantity, text, words } from "./row.js";

/** From the module to the tracker: everything on the array side of an inverter, in the order of the reference page. */
export const arrayKinds: readonly KindRow[] = [
  {
    kind: "module",
    title: "PV module",
    help: "A photovoltaic module as its data sheet describes it, at standard test conditions (STC: 1000 W/m², cell at 25 °C, air mass 1.5).",
    declaredAs: "part",
    terminals: [],
    properties: [
      quantity("power", "power", "Rated maximum power at STC.", {
        symbol: "Pmax",
        sheet: "Pmax, maximum power",
        typical: "430 W",
        essential: true,
      }),
      quantity("open-circuit-voltage", "voltage", "Open-circuit voltage at STC.", {
        symbol: "Uoc",
        sheet: "Voc, open-circuit voltage",
        typical: "38.9 V",
        essential: true,
      }),
      quantity("short-circuit-current", "current", "Short-circuit current at STC.", {
        symbol: "Isc",
        sheet: "Isc, short-circuit current",
        typical: "14.0 A",
        essential: true,
      }),
      quantity("voltage-at-max-power", "voltage", "Voltage at the maximum power point (MPP) at STC.", {
        symbol: "Ump",
        sheet: "Vmp or Vmpp",
        typical: "32.6 V",
        essential: true,
      }),
      quantity("current-at-max-power", "current", "Current at the maximum power point (MPP) at STC.", {
        symbol: "Imp",
        sheet: "Imp or Impp",
        typical: "13.2 A",
        essential: true,
      }),
      quantity(
        "open-circuit-voltage-coefficient",
        ["ratio-per-kelvin", "voltage-per-kelvin"],
        "Change of Uoc per kelvin of cell temperature; negative.",
        {
          symbol: "β",
          sheet: "temperature coefficient of Voc",
          typical: "-0.25 %/K",
          essential: true,
          sign: "negative",
        },
      ),
      quantity(
        "short-circuit-current-coefficient",
        ["ratio-per-kelvin", "current-per-kelvin"],
        "Change of Isc per kelvin of cell temperature; positive.",
        { symbol: "α", sheet: "temperature coefficient of Isc", typical: "0.045 %/K", essential: true },
      ),
      quantity("power-coefficient", "ratio-per-kelvin", "Change of Pmax per kelvin of cell temperature; negative.", {
        symbol: "γ",
        sheet: "temperature coefficient of Pmax",
        typical: "-0.29 %/K",
        essential: true,
        sign: "negative",
      }),
      quantity(
        "voltage-at-max-power-coefficient",
        ["ratio-per-kelvin", "voltage-per-kelvin"],
        "Change of Ump per kelvin. Few sheets print it; without it, it is derived from the power and current coefficients.",
        { symbol: "βmp", sheet: "temperature coefficient of Vmp", typical: "-0.29 %/K", sign: "negative" },
      ),
      quantity("max-system-voltage", "voltage", "Highest system voltage the module may be used at.", {
        symbol: "Usys",
        sheet: "maximum system voltage",
        typical: "1500 V",
        essential: true,
      }),
      quantity("max-series-fuse", "current", "Largest overcurrent protection the module stands for reverse current.", {
        symbol: "IMOD_MAX_OCPR",
        sheet: "maximum series fuse rating",
        typical: "25 A",
        essential: true,
      }),
      quantity(
        "nominal-operating-cell-temperature",
        "temperature",
        "Cell temperature at 800 W/m², 20 °C air, 1 m/s wind. Says how hot cells get that stand free (mounting: ground).",
        { symbol: "NOCT", sheet: "NOCT or NMOT", typical: "45 degC" },
      ),
      quantity(
        "bifacial-gain",
        "ratio",
        "Extra current from light on the rear, as a share of Isc, where the design relies on a figure.",
        { symbol: "gb", typical: "10 %" },
      ),
      count("cells-in-series", "Cells in series in one module.", { symbol: "Ns", typical: "54", checked: "not-yet" }),
      words(
        "technology",
        ["mono-crystalline", "multi-crystalline", "thin-film"],
        "Cell technology; table methods hold for crystalline silicon only.",
        { assumed: { text: "mono-crystalline", reason: "most roof modules are crystalline silicon" } },
      ),
      quantity("impulse-withstand", "voltage", "Impulse voltage the module withstands.", {
        symbol: "Uw",
        typical: "8 kV",
      }),
      text(
        "connector",
        "Make and type of its plug-and-socket connectors. Halves of different makes must not be mated.",
        { typical: '"Bayonet P4"' },
      ),
      maker,
      note,
    ],
  },
  {
    kind: "string",
    title: "PV string",
    help: "Modules wired in series: `string S1 is 11 x Hollin430`. It cannot be switched off: it is live whenever there is light.",
    declaredAs: "item",
    terminals: ["out"],
    source: "pv",
    properties: [
      quantity("tilt", "angle", "Slope of the modules from horizontal.", { typical: "35 deg", essential: true }),
      quantity("azimuth", "angle", "Direction the modules face, clockwise from north.", {
        typical: "180 deg",
        essential: true,
      }),
      words(
        "mounting",
        ["on-roof", "in-roof", "flat-roof", "facade", "ground"],
        "How the modules are fixed; decides how hot the cells get.",
        {
          essential: true,
          assumed: { text: "on-roof", reason: "the usual retrofit; the cells run hotter than on an open rack" },
        },
      ),
      text("shading", "What shades it and when.", { checked: "never" }),
      existing,
      labels,
      location,
      note,
    ],
  },
  ...dcDeviceKinds,
  {
    kind: "cable",
    title: "cable",
    help: "A cable as its data sheet describes it. A run lays a length of it.",
    declaredAs: "part",
    terminals: [],
    properties: [
      quantity("conductor-area", "area", "Nominal cross-section of a live conductor.", {
        symbol: "S",
        typical: "4 mm2",
        essential: true,
      }),
      words(
        "conductor-class",
        ["class-1", "class-2", "class-5"],
        "Class of IEC 60228: 1 solid, 2 stranded, 5 flexible.",
        { typical: "class-5", essential: true },
      ),
      words("conductor-coating", ["plain", "tinned"], "Plain or metal-coated copper.", {
        typical: "tinned",
        assumed: { text: "plain", reason: "building wires are plain copper" },
      }),
      words(
        "type",
        ["pv", "singles", "multicore", "twin-and-earth", "armoured", "battery-lead", "tails"],
        "Sort of cable. Only a PV cable (EN 50618) is made for the sun and the roof.",
        { typical: "pv", essential: true },
      ),
      words(
        "insulation",
        ["thermoplastic-70", "thermosetting-90", "pv-120"],
        "Insulation and its highest conductor temperature.",
        { typical: "pv-120", essential: true },
      ),
      quantity("rated-dc-voltage", "voltage", "Rated d.c. voltage between conductors.", {
        symbol: "Udc",
        typical: "1500 V",
        essential: true,
      }),
      quantity("protective-conductor-area", "area", "Cross-section of the protective conductor in the cable.", {
        symbol: "Spe",
        typical: "2.5 mm2",
      }),
      count("cores", "Number of live cores.", { typical: "2", checked: "not-yet" }),
      words("conductor-material", ["copper", "aluminium"], "What the conductors are made of.", {
        assumed: { text: "copper", reason: "wiring of buildings is copper unless its sheet says otherwise" },
      }),
      quantity("armour-area", "area", "Cross-section of the armour, where it serves as protective conductor.", {
        symbol: "S",
        typical: "42 mm2",
      }),
      maker,
      note,
    ],
  },
  ...inverterKinds,
];
