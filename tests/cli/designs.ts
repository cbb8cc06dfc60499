/** A small invented installation for the tests of the command line, in pieces. */

export const parts = `part Sorrel420 is module {
    power: 420 W
    open-circuit-voltage: 38.9 V
    short-circuit-current: 14.0 A
    voltage-at-max-power: 32.6 V
    current-at-max-power: 12.9 A
    open-circuit-voltage-coefficient: -0.25 %/K
    short-circuit-current-coefficient: 0.045 %/K
    power-coefficient: -0.29 %/K
    max-system-voltage: 1500 V
}
part Mill5 is inverter {
    max-dc-voltage: 600 V
    built-in-dc-isolator: yes
    tracker pv1 { voltage-range: 80..550 V  max-current: 16 A  max-short-circuit-current: 20 A  inputs: 1 }
}
part Line4 is cable {
    conductor-area: 4 mm2
    conductor-class: class-5
    type: pv
    insulation: pv-120
    rated-dc-voltage: 1500 V
}
`;

export const site = `site "Reed Barn" {
    rules: gb
    lowest-temperature: -10 degC
    highest-temperature: 35 degC
}
`;

/** From 15 modules up, the inverter's 600 V are exceeded at −10 °C. */
export function plant(modules: number): string {
  return `string S1 is ${modules} x Sorrel420 { tilt: 35 deg  azimuth: 180 deg }
inverter INV is Mill5
run W1 from S1 to INV.pv1: 12 m of Line4
`;
}

/** A whole design in one file. */
export function design(modules: number): string {
  return site + parts + plant(modules);
}

/** Line on which the string of `design` stands. */
export const stringLine = (site + parts).split("\n").length;

/** A design with its parts in a file of their own. */
export const inTwoFiles = (modules: number): Record<string, string> => ({
  "barn.sun": `use "parts/sheets.sun"\n${site}${plant(modules)}`,
  "parts/sheets.sun": parts,
});
