/** Parts of the a.c. side that the examples of the rules have in common: see `example-parts.ts`. All invented. */
export const exampleAcParts = `part SplitBoard is board {
    rated-current: 100 A
    ways: 12
    conductors-per-terminal: 1
}
part MainSwitch100 is isolator {
    supply: ac
    rated-voltage: 400 V
    rated-current: 100 A
    poles: 2
    utilisation-category: AC-22A
    opens-all-poles-together: yes
    lockable: yes
    polarity-sensitive: no
}
part Switch63 is isolator {
    supply: ac
    rated-voltage: 400 V
    rated-current: 63 A
    poles: 2
    utilisation-category: AC-22A
    opens-all-poles-together: yes
    lockable: yes
    polarity-sensitive: no
}
part Rcd63A is rcd {
    rated-current: 63 A
    residual-current: 30 mA
    type: A
    poles: 2
    power-flow: both-ways
}
part Breaker16B is breaker {
    rated-current: 16 A
    curve: B
    breaking-capacity: 6 kA
    poles: 2
    power-flow: both-ways
}
part Breaker25B is breaker {
    rated-current: 25 A
    curve: B
    breaking-capacity: 6 kA
    poles: 2
    power-flow: both-ways
}
part Breaker32B is breaker {
    rated-current: 32 A
    curve: B
    breaking-capacity: 6 kA
    poles: 2
    power-flow: both-ways
}
part Rcbo25A is rcbo {
    rated-current: 25 A
    curve: B
    breaking-capacity: 6 kA
    residual-current: 30 mA
    type: A
    poles: 2
    power-flow: both-ways
}
part Rcbo32A is rcbo {
    rated-current: 32 A
    curve: B
    breaking-capacity: 6 kA
    residual-current: 30 mA
    type: A
    poles: 2
    power-flow: both-ways
}
part GenMeter1ph is meter {
    rated-current: 80 A
    measures: generation
    phases: 1
}
part Twin4 is cable {
    conductor-area: 4 mm2
    protective-conductor-area: 1.5 mm2
    conductor-class: class-2
    conductor-coating: plain
    type: twin-and-earth
    insulation: thermoplastic-70
    cores: 2
}
part Twin6 is cable {
    conductor-area: 6 mm2
    protective-conductor-area: 2.5 mm2
    conductor-class: class-2
    conductor-coating: plain
    type: twin-and-earth
    insulation: thermoplastic-70
    cores: 2
}
part Twin10 is cable {
    conductor-area: 10 mm2
    protective-conductor-area: 4 mm2
    conductor-class: class-2
    conductor-coating: plain
    type: twin-and-earth
    insulation: thermoplastic-70
    cores: 2
}
part Tails25 is cable {
    conductor-area: 25 mm2
    protective-conductor-area: 16 mm2
    conductor-class: class-2
    conductor-coating: plain
    type: tails
    insulation: thermoplastic-70
    cores: 2
}
`;
