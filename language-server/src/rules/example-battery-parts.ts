/** A hybrid inverter with its battery, for the examples of the rules: see `example-parts.ts`. All invented. */
export const exampleBatteryParts = `part Fell5 is inverter {
    max-dc-voltage: 500 V
    max-dc-power: 7 kW
    tracker pv1 { voltage-range: 120..430 V  start-voltage: 130 V  max-current: 16 A  max-short-circuit-current: 20 A  inputs: 1 }
    tracker pv2 { voltage-range: 120..430 V  start-voltage: 130 V  max-current: 16 A  max-short-circuit-current: 20 A  inputs: 1 }
    ac {
        rated-power: 5 kW
        max-current: 21.7 A
        max-import-current: 25 A
        phases: 1
        impulse-withstand: 4 kV
        disconnects-all-poles: yes
    }
    battery {
        voltage-range: 40..60 V
        max-current: 120 A
        efficiency: 95 %
    }
    backup {
        rated-power: 5 kW
        max-current: 21.7 A
        pass-through-current: 25 A
        fault-current: 45 A
        phases: 1
    }
    galvanic-separation: no
    dc-residual-current-declared: yes
    standing-leakage: 5 mA
    impulse-withstand: 4 kV
    built-in-surge-protection: no
    built-in-dc-isolator: no
    connector: "Bayonet P4"
}
part Stack51 is battery {
    nominal-voltage: 51.2 V
    voltage-range: 44.8..57.6 V
    energy: 10 kWh
    max-current: 125 A
    fault-current: 4 kA
    joined: in-parallel
    max-units-in-parallel: 3
    built-in-isolator: no
}
part LinkBat125 is fuse {
    rated-current: 125 A
    rated-voltage: 80 V
    breaking-capacity: 10 kA
    category: gBat
    fused-poles: both
    supply: dc
}
part LeverDc200 is isolator {
    supply: dc
    rated-voltage: 80 V
    rated-current: 200 A
    poles: 2
    opens-all-poles-together: yes
    lockable: yes
    polarity-sensitive: no
}
part Lead35 is cable {
    type: battery-lead
    conductor-area: 35 mm2
    conductor-class: class-5
    conductor-coating: plain
    insulation: thermosetting-90
    rated-dc-voltage: 100 V
}
`;
