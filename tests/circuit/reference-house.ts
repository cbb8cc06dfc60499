/**
 * The house that the acceptance questions are asked about: two strings, a hybrid inverter with battery and backup, and
 * an old board on a TN-C-S supply. Q5 sits on a way of the old board, Q6 is its main switch, Q7 the switch of the
 * backup board, K1 the neutral–earth relay, E2 the own electrode.
 */
export const referenceHouse = `site "Reference house" {
    rules: gb
    lowest-temperature: -15 degC
    highest-temperature: 35 degC
    ground-flash-density: 0.5 /km2/yr
}

supply GRID {
    voltage: 230 V
    measured-voltage: 246 V from "survey 2026-05-02"
    phases: 1
    earthing: TN-C-S from "survey 2026-05-02"
    service-fuse: 80 A
    external-loop-impedance: 0.25 ohm
    prospective-fault-current: 1.6 kA
    grid-route: apply-first
}

part Module430 is module {
    power: 430 W
    open-circuit-voltage: 38.8 V
    short-circuit-current: 13.9 A
    voltage-at-max-power: 32.6 V
    current-at-max-power: 13.2 A
    open-circuit-voltage-coefficient: -0.25 %/K
    voltage-at-max-power-coefficient: -0.29 %/K
    short-circuit-current-coefficient: 0.045 %/K
    max-series-fuse: 25 A
}
part Hybrid5 is inverter {
    max-dc-voltage: 500 V
    tracker pv1 { voltage-range: 120..430 V  max-current: 16 A  max-short-circuit-current: 20 A  inputs: 1 }
    tracker pv2 { voltage-range: 120..430 V  max-current: 16 A  max-short-circuit-current: 20 A  inputs: 1 }
    ac { rated-power: 5 kW  max-current: 21.7 A  phases: 1  max-import-current: 40 A  disconnects-all-poles: yes }
    backup { rated-power: 5 kW  max-current: 21.7 A  pass-through-current: 40 A }
    battery { voltage-range: 44.8..57.6 V  max-current: 120 A  efficiency: 95 % }
    galvanic-separation: no
}
part Battery51 is battery {
    nominal-voltage: 51.2 V
    voltage-range: 44.8..57.6 V
    energy: 10 kWh
    max-current: 120 A
}
part Rotary is isolator {
    supply: dc
    rated-voltage: 600 V
    rated-current: 32 A
    poles: 2
    utilisation-category: DC-PV2
    opens-all-poles-together: yes
    lockable: yes
}
part LowVoltageSwitch is isolator { supply: dc  rated-voltage: 80 V  rated-current: 200 A  poles: 2  lockable: yes }
part AcSwitch is isolator { supply: ac  rated-voltage: 400 V  rated-current: 63 A  poles: 2  lockable: yes }
part MainSwitch is isolator { supply: ac  rated-voltage: 400 V  rated-current: 100 A  poles: 2 }
part Fuse125 is fuse { rated-current: 125 A  rated-voltage: 80 V  category: gBat  fused-poles: both }
part Surge600 is spd { supply: dc  type: type-2  max-continuous-voltage: 600 V }
part Rcbo32 is rcbo { rated-current: 32 A  curve: C  residual-current: 30 mA  type: A  poles: 2  power-flow: both-ways }
part B32 is breaker { rated-current: 32 A  curve: B  breaking-capacity: 6 kA  poles: 1 }
part Rcd63 is rcd { rated-current: 63 A  residual-current: 30 mA  type: AC  poles: 2 }
part GenMeter is meter { rated-current: 100 A  measures: generation  phases: 1 }
part Solar4 is cable { conductor-area: 4 mm2  conductor-class: class-5  type: pv  insulation: pv-120 }
part Lead35 is cable { conductor-area: 35 mm2  conductor-class: class-5  type: battery-lead  insulation: thermosetting-90 }
part Twin6 is cable { conductor-area: 6 mm2  conductor-class: class-2  type: twin-and-earth  insulation: thermoplastic-70 }
part Tails25 is cable { conductor-area: 25 mm2  conductor-class: class-2  type: tails  insulation: thermoplastic-70 }

string A is 11 x Module430 { tilt: 35 deg  azimuth: 90 deg }
string B is 6 x Module430 { tilt: 35 deg  azimuth: 270 deg }
isolator Q1 is Rotary
isolator Q2 is Rotary
spd U1 is Surge600
spd U2 is Surge600
inverter INV is Hybrid5
battery BAT is Battery51
fuse F1 is Fuse125
isolator Q3 is LowVoltageSwitch
isolator Q4 is AcSwitch
meter M1 is GenMeter

run W1 from A to Q1: 18 m of Solar4
run W2 from Q1 to INV.pv1: 1 m of Solar4
run W3 from Q1 to U1: 0.3 m of Solar4
run W4 from B to Q2: 24 m of Solar4
run W5 from Q2 to INV.pv2: 1 m of Solar4
run W6 from Q2 to U2: 0.3 m of Solar4
run W7 from BAT to F1: 0.3 m of Lead35
run W8 from F1 to Q3: 0.3 m of Lead35
run W9 from Q3 to INV.battery: 1 m of Lead35
run W10 from INV.ac to Q4: 0.5 m of Twin6
run W11 from Q4 to M1: 0.5 m of Twin6
run W12 from M1 to OLD.Q5: 13 m of Twin6
run W13 from INV.backup to NEW: 2 m of Twin6
run W14 from GRID to OLD: 3 m of Tails25

board OLD {
    existing: yes
    rated-current: 100 A
    ways: 8
    isolator Q6 is MainSwitch
    rcd RCD2 is Rcd63 {
        way 1: breaker K2 is B32 serves "kitchen sockets"
        way 2: breaker K3 is B32 serves SHOWER
    }
    way 8: rcbo Q5 is Rcbo32 serves INV
}
board NEW {
    rated-current: 63 A
    ways: 4
    isolator Q7 is AcSwitch
    way 1: rcbo K4 is Rcbo32 serves FREEZER
    way 2: rcbo K5 is Rcbo32 serves "lights"
}
load SHOWER { power: 7 kW  existing: yes }
load FREEZER { power: 0.2 kW }
link K1 { closed-in: island  at: INV.backup  electrode: E2  interlocked: yes }
electrode E2 { resistance: 48 ohm  conductor: 16 mm2 }
earthing { main-conductor: 16 mm2  main-bonding: 10 mm2 }
ct CT1 { around: W14  arrow: towards-load  read-by: INV }
`;
