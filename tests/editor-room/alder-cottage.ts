/** The invented two-string house that the language page shows, shortened to its array side, in two files. */
export const roof = `/** A module with a frame of its own. */
part Hollin430 is module {
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
}
part Solar4 is cable {
    conductor-area: 4 mm2
    conductor-class: class-5
    conductor-coating: tinned
    type: pv
    insulation: pv-120
    rated-dc-voltage: 1500 V
}
`;

export const plant = `part RotaryDc32 is isolator {
    supply: dc
    rated-voltage: 800 V
    rated-current: 32 A
    poles: 2
    utilisation-category: DC-PV2
    opens-all-poles-together: yes
    lockable: yes
    polarity-sensitive: no
}
part SurgeDc800 is spd {
    supply: dc
    type: type-2
    max-continuous-voltage: 800 V
    protection-level: 2.8 kV
    short-circuit-rating: 10 kA
    lead-length: 0.4 m
    earth-conductor: 6 mm2
    backup-fuse-needed: no
}
part Brook4 is inverter {
    max-dc-voltage: 600 V
    tracker pv1 { voltage-range: 80..550 V  max-current: 16 A  max-short-circuit-current: 20 A  inputs: 1 }
    tracker pv2 { voltage-range: 80..550 V  max-current: 16 A  max-short-circuit-current: 20 A  inputs: 1 }
    ac { rated-power: 4.2 kW  max-current: 19.1 A  phases: 1 }
    galvanic-separation: no
    impulse-withstand: 4 kV
}
`;

export const cottage = `use "roof.sun"
use "plant.sun"

site "Alder Cottage" {
    rules: gb
    lowest-temperature: -10 degC
    highest-temperature: 35 degC
    ground-flash-density: 0.5 /km2/yr
}

/** Rear slope, no shading after 9 am. */
string S1 is 8 x Hollin430 {
    tilt: 35 deg
    azimuth: 180 deg
    mounting: on-roof
}
string S2 is 6 x Hollin430 { tilt: 35 deg  azimuth: 270 deg  mounting: on-roof }

isolator Q1 is RotaryDc32 { location: "plant wall" }
isolator Q2 is RotaryDc32 { location: "plant wall" }
spd F1 is SurgeDc800
spd F2 is SurgeDc800
inverter INV is Brook4

run W1 from S1 to Q1: 9 m of Solar4 { method: conduit-in-air  ambient: 45 degC }
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to F1: 0.4 m of Solar4           // tee: on the dead side of Q1
run W4 from S2 to Q2: 8 m of Solar4
run W5 from Q2 to INV.pv2: 1.2 m of Solar4
run W6 from Q2 to F2: 0.4 m of Solar4
`;

export const files = { "cottage.sun": cottage, "roof.sun": roof, "plant.sun": plant };
