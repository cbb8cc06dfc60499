/** Designs of any length, all electrically sound, for measuring. The edit that is measured makes one string too long. */

const sheets = `site "Long Row" {
    rules: gb
    lowest-temperature: -10 degC
    highest-temperature: 35 degC
    ground-flash-density: 0.5 /km2/yr
    building: dwelling
    lightning-protection: none
}

part Sallow405 is module {
    power: 405 W
    open-circuit-voltage: 37.4 V
    short-circuit-current: 13.8 A
    voltage-at-max-power: 31.2 V
    current-at-max-power: 13.0 A
    open-circuit-voltage-coefficient: -0.26 %/K
    short-circuit-current-coefficient: 0.045 %/K
    power-coefficient: -0.34 %/K
    max-system-voltage: 1500 V
    max-series-fuse: 25 A
    impulse-withstand: 8 kV
    technology: mono-crystalline
    connector: "Bayonet P4"
}
part Solar4 is cable {
    type: pv
    conductor-area: 4 mm2
    conductor-class: class-5
    conductor-coating: tinned
    insulation: pv-120
    rated-dc-voltage: 1500 V
}
part Beck5 is inverter {
    max-dc-voltage: 600 V
    max-dc-power: 9 kW
    tracker pv1 {
        voltage-range: 120..540 V
        start-voltage: 120 V
        max-current: 16 A
        max-short-circuit-current: 20 A
        inputs: 1
    }
    tracker pv2 {
        voltage-range: 120..540 V
        start-voltage: 120 V
        max-current: 16 A
        max-short-circuit-current: 20 A
        inputs: 1
    }
    ac {
        rated-power: 5 kW
        max-current: 22 A
        phases: 1
    }
    galvanic-separation: no
    impulse-withstand: 4 kV
    built-in-surge-protection: no
    built-in-dc-isolator: no
    conductors-per-terminal: 1
    connector: "Bayonet P4"
}
`;

const switches = `part RotaryDc32 is isolator {
    supply: dc
    rated-voltage: 800 V
    rated-current: 32 A
    poles: 2
    utilisation-category: DC-PV2
    opens-all-poles-together: yes
    lockable: yes
    polarity-sensitive: no
    conductors-per-terminal: 2
    terminal-area: 2.5..16 mm2
}
part SurgeDc800 is spd {
    supply: dc
    type: type-2
    max-continuous-voltage: 800 V
    protection-level: 2.8 kV
    short-circuit-rating: 10 kA
    backup-fuse-needed: no
    conductors-per-terminal: 1
    terminal-area: 2.5..16 mm2
    lead-length: 0.4 m
    earth-conductor: 6 mm2
}
`;

function house(number: number): string {
  const n = number;
  return `
/** Roof ${n}: one slope to the south, one to the west. */
string S${n}a is 12 x Sallow405 {
    tilt: 35 deg
    azimuth: 180 deg
    mounting: on-roof
}
string S${n}b is 6 x Sallow405 { tilt: 35 deg  azimuth: 270 deg  mounting: on-roof }
isolator Q${n}a is RotaryDc32 { location: "plant room" }
isolator Q${n}b is RotaryDc32 { location: "plant room" }
spd F${n}a is SurgeDc800
spd F${n}b is SurgeDc800
inverter INV${n} is Beck5 { place: indoors }
run W${n}a from S${n}a to Q${n}a: 7 m of Solar4 {
    method: conduit-in-air
    ambient: 45 degC
    start-connector: "Bayonet P4"
    connector-rated-voltage: 1500 V
}
run W${n}b from S${n}b to Q${n}b: 8 m of Solar4 {
    method: conduit-in-air
    ambient: 45 degC
    start-connector: "Bayonet P4"
    connector-rated-voltage: 1500 V
}
run W${n}c from Q${n}a to INV${n}.pv1: 1.2 m of Solar4 {
    method: on-surface
    ambient: 30 degC
    end-connector: "Bayonet P4"
    connector-rated-voltage: 1500 V
}
run W${n}d from Q${n}b to INV${n}.pv2: 1.2 m of Solar4 {
    method: on-surface
    ambient: 30 degC
    end-connector: "Bayonet P4"
    connector-rated-voltage: 1500 V
}
run W${n}e from Q${n}a to F${n}a: 0.2 m of Solar4
run W${n}f from Q${n}b to F${n}b: 0.2 m of Solar4
`;
}

/** A design of about so many lines. */
export function designOf(lines: number): string {
  const pieces = [sheets, switches];
  let count = pieces.join("").split("\n").length;
  for (let number = 1; count < lines - 10; number++) {
    const piece = house(number);
    pieces.push(piece);
    count += piece.split("\n").length - 1;
  }
  return pieces.join("");
}

/** An edit of one character and its undoing: `12` modules become `16` in a string in the middle of the text. */
export function lengthen(text: string): { readonly offset: number; readonly texts: readonly [string, string] } {
  const strings = [...text.matchAll(/is 12 x Sallow405/g)];
  const middle = strings[Math.floor(strings.length / 2)];
  if (!middle) throw new Error("The design has no string to edit");
  return { offset: middle.index + 4, texts: ["6", "2"] };
}

/** JSON of as many lines, with the same kind of content. */
export function jsonOf(lines: number): string {
  const houses: string[] = [];
  const perHouse = 8;
  for (let number = 1; number <= Math.max(1, Math.round((lines - 2) / perHouse)); number++) {
    houses.push(`  {
    "name": "S${number}",
    "count": 13,
    "module": "Sallow405",
    "tilt": 35,
    "azimuth": 180,
    "mounting": "on-roof"
  }`);
  }
  return `[\n${houses.join(",\n")}\n]\n`;
}

/** The edit for JSON: a digit that becomes a letter, so that one problem comes and goes. */
export function spoil(text: string): { readonly offset: number; readonly texts: readonly [string, string] } {
  const counts = [...text.matchAll(/"count": 13/g)];
  const middle = counts[Math.floor(counts.length / 2)];
  if (!middle) throw new Error("The text has no count to edit");
  return { offset: middle.index + 10, texts: ["x", "3"] };
}
