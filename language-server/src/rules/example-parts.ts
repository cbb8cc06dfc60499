import { exampleAcParts } from "./example-ac-parts.js";
import { exampleBatteryParts } from "./example-battery-parts.js";

/**
 * What the examples of the rules have in common: a site and a few invented parts, so that an example shows only the
 * lines that matter to its rule.
 */

const exampleSite = `site "Alder Cottage" {
    rules: gb
    lowest-temperature: -10 degC
    highest-temperature: 35 degC
    ground-flash-density: 0.5 /km2/yr
    building: dwelling
    lightning-protection: none
}
`;

const exampleParts = `part Hollin430 is module {
    power: 430 W
    open-circuit-voltage: 38.9 V
    short-circuit-current: 14.0 A
    voltage-at-max-power: 32.6 V
    current-at-max-power: 13.2 A
    open-circuit-voltage-coefficient: -0.25 %/K
    short-circuit-current-coefficient: 0.045 %/K
    power-coefficient: -0.29 %/K
    max-system-voltage: 1500 V
    max-series-fuse: 25 A
    connector: "Bayonet P4"
}
part Brook4 is inverter {
    max-dc-voltage: 600 V
    max-dc-power: 8 kW
    tracker pv1 { voltage-range: 80..550 V  start-voltage: 100 V  max-current: 16 A  max-short-circuit-current: 20 A  inputs: 1 }
    tracker pv2 { voltage-range: 80..550 V  start-voltage: 100 V  max-current: 16 A  max-short-circuit-current: 20 A  inputs: 1 }
    ac { rated-power: 4.2 kW  max-current: 19.1 A  phases: 1 }
    galvanic-separation: no
    impulse-withstand: 4 kV
    built-in-surge-protection: no
    built-in-dc-isolator: no
    connector: "Bayonet P4"
    conductors-per-terminal: 1
}
part Ridge12 is inverter {
    max-dc-voltage: 1000 V
    max-dc-power: 24 kW
    tracker pv1 { voltage-range: 160..850 V  start-voltage: 180 V  max-current: 60 A  max-short-circuit-current: 90 A  inputs: 4 }
    tracker pv2 { voltage-range: 160..850 V  start-voltage: 180 V  max-current: 60 A  max-short-circuit-current: 90 A  inputs: 4 }
    ac { rated-power: 12 kW  max-current: 17.4 A  phases: 3 }
    galvanic-separation: no
    impulse-withstand: 6 kV
    built-in-surge-protection: no
    built-in-dc-isolator: no
    connector: "Bayonet P4"
    conductors-per-terminal: 1
}
part RotaryDc32 is isolator {
    supply: dc
    rated-voltage: 800 V
    rated-current: 32 A
    poles: 2
    utilisation-category: DC-PV2
    opens-all-poles-together: yes
    lockable: yes
    polarity-sensitive: no
    conductors-per-terminal: 2
}
part SurgeDc800 is spd {
    supply: dc
    type: type-2
    max-continuous-voltage: 800 V
    protection-level: 2.8 kV
    short-circuit-rating: 10 kA
    backup-fuse-needed: no
    conductors-per-terminal: 1
}
part FuseLink20 is fuse {
    rated-current: 20 A
    rated-voltage: 1000 V
    category: gPV
    fused-poles: both
    breaking-capacity: 30 kA
}
part FuseLink25 is fuse {
    rated-current: 25 A
    rated-voltage: 1000 V
    category: gPV
    fused-poles: both
    breaking-capacity: 30 kA
}
part Combiner63 is combiner {
    rated-voltage: 1000 V
    rated-current: 63 A
    inputs: 4
    conductors-per-terminal: 1
}
part Solar4 is cable {
    conductor-area: 4 mm2
    conductor-class: class-5
    conductor-coating: tinned
    type: pv
    insulation: pv-120
    rated-dc-voltage: 1500 V
}
part Solar6 is cable {
    conductor-area: 6 mm2
    conductor-class: class-5
    conductor-coating: tinned
    type: pv
    insulation: pv-120
    rated-dc-voltage: 1500 V
}
part Solar16 is cable {
    conductor-area: 16 mm2
    conductor-class: class-5
    conductor-coating: tinned
    type: pv
    insulation: pv-120
    rated-dc-voltage: 1500 V
}
${exampleAcParts}${exampleBatteryParts}`;

/** Prepended to every example that brings no site of its own. */
export const examplePreamble = exampleSite + exampleParts;

/** A complete design from an example: the common parts with the example's own `site`, or with the common one. */
export function exampleText(example: string): string {
  const hasOwnSite = /^site /m.test(example);
  return (hasOwnSite ? exampleParts : examplePreamble) + example;
}
