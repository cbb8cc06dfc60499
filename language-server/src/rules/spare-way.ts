import type { BoardCircuit, BoardView, Plant } from "../circuit/plant.js";
import { flagOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { counted } from "../physics/make.js";
import { formatFigure } from "../physics/working.js";
import { freeNumbers } from "./free-ways.js";
import type { Judge } from "./judge.js";
import { idsOf, listed, stated } from "./phrases.js";
import { type Fix, type Outcome, rule } from "./rule.js";
import { needFacts } from "./run-facts.js";
import { eachOf } from "./several.js";

export const spareWay = rule<BoardView>({
  id: "spare-way",
  section: "A.c. side and the existing board",
  severity: "warning",
  title: "Each way of a board is taken once and exists, and an old board can take what is added.",
  what: "Compares the numbers of the ways on each board with each other and with how many ways the board has. Where an inverter or generating unit is added to a board that was there before, asks whether its spare ways can be used and whether every device in it is one that the board's maker names for it. How many ways a wide device covers is not known here.",
  why: "A way that is already taken is found out on site, with the board open. A device of another maker in a board voids what the board was tested for: its bar may not grip it, and it may overheat.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "536.4.203, devices that the board's maker names", basis: "memory" },
      { title: "BS EN 61439-3", clause: "assemblies are verified with their own devices", basis: "memory" },
    ],
    iec: [{ title: "IEC 61439-3", clause: "assemblies are verified with their own devices", basis: "memory" }],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1 }
board CU is SplitBoard {
    isolator MS is MainSwitch100
    way 1: breaker K1 is Breaker32B serves "kitchen sockets"
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `supply GRID { voltage: 230 V  phases: 1 }
board CU is SplitBoard {
    isolator MS is MainSwitch100
    way 9: breaker K1 is Breaker32B serves "kitchen sockets"
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
  },
  over: "plant",
  subjects: (plant: Plant) => plant.boards,
  thing: ({ item }) => item,
  judge: (view, judge) =>
    eachOf(
      () => taken(view, judge),
      () => beyondTheBoard(view, judge),
      () => extended(view, judge),
    ),
});

function taken({ item, circuits }: BoardView, judge: Judge): Outcome[] {
  const byNumber = new Map<number, Item[]>();
  for (const { way, device } of circuits) {
    if (way === undefined) continue;
    const own = byNumber.get(way);
    if (own) own.push(device);
    else byNumber.set(way, [device]);
  }
  const outcomes: Outcome[] = [];
  for (const [way, devices] of byNumber) {
    const [first, ...others] = devices;
    const last = others[others.length - 1];
    if (!first || !last) continue;
    outcomes.push(
      judge.finding({
        what: `Way ${way} of ${item.id} is taken ${others.length === 1 ? "twice" : `${devices.length} times`}: by ${idsOf(devices)}.`,
        why: "Only one of them fits there, and where the other goes is found out with the board open.",
        todo: `Give ${last.id} a way that is free${freeText(item, judge)}.`,
        spot: { thing: last, word: "name" },
        related: [{ spot: { thing: first, word: "name" }, message: `${first.id} is on way ${way}` }],
        // Which of three or more stays is not for one choice.
        fixes: (asked) => (others.length === 1 ? freeWays(item, last, asked) : []),
      }),
    );
  }
  return outcomes;
}

function freeText(board: Item, judge: Judge): string {
  const free = freeNumbers(board, judge, 6);
  if (!free) return "";
  return free.length === 0 ? "; the board has none left" : ` (nothing is written for ${listed(free.map(String))})`;
}

function freeWays(board: Item, device: Item, judge: Judge): Fix[] {
  return (freeNumbers(board, judge, 3) ?? []).map((way) => ({
    title: `Move ${device.id} to way ${way}`,
    preview: "nothing is written for it: look at the board",
    does: "set-way",
    thing: device,
    way,
  }));
}

function beyondTheBoard({ item, circuits }: BoardView, judge: Judge): Outcome | readonly Outcome[] {
  const numbered = circuits.filter((circuit): circuit is BoardCircuit & { way: number } => circuit.way !== undefined);
  if (numbered.length === 0) return judge.notApplicable("no way of it is numbered");
  const [ways] = judge.need([item, "ways"]);
  const outside = numbered.filter(({ way }) => way > ways.value || way < 1);
  if (outside.length === 0)
    return judge.pass(counted("N", new Set(numbered.map(({ way }) => way)).size, item.id), ways, "ways");
  return outside.map(({ way, device }) =>
    judge.finding({
      what: `${device.id} is on way ${way}; ${item.id} has ${formatFigure(ways)} ways.`,
      why: "There is no such place in the board.",
      todo: "Use a way that the board has, or a board with more.",
      spot: { thing: device, word: "name" },
      value: counted("way", way, device.id),
      limit: ways,
      related: [stated(item, "ways", ways)],
      fixes: (asked) => freeWays(item, device, asked),
    }),
  );
}

/** What an old board must be able to take before anything is added to it. */
function extended({ item, circuits }: BoardView, judge: Judge): Outcome[] | undefined {
  // What is said of a board counts whether or not it is said to have been there before.
  const isSaid = judge.knows(item, "spare-ways-usable") || judge.knows(item, "devices-of-board-maker");
  if (!isSaid && flagOf(item, "existing") !== true) return undefined;
  const added = circuits.filter(
    ({ beyond, device }) =>
      beyond.gridPorts.length + beyond.generators.length > 0 && flagOf(device, "existing") !== true,
  );
  const [first] = added;
  if (!first) return undefined;
  needFacts(judge, [item, "spare-ways-usable"], [item, "devices-of-board-maker"]);
  const related = [{ spot: { thing: first.device, word: "name" as const }, message: "what is added" }];
  const outcomes: Outcome[] = [];
  if (judge.flag(item, "spare-ways-usable")) outcomes.push(judge.holds("its spare ways can be used"));
  else
    outcomes.push(
      judge.finding({
        what: `${first.device.id} is added to ${item.id}, whose spare ways cannot take a further device.`,
        why: "What does not fit the bar sits loose on it and overheats.",
        todo: "Plan a board of its own at the tails, or a new board.",
        spot: { thing: item, property: "spare-ways-usable" },
        related,
      }),
    );
  if (judge.flag(item, "devices-of-board-maker"))
    outcomes.push(judge.holds("every device in it is one that the board's maker names"));
  else
    outcomes.push(
      judge.finding({
        what: `${first.device.id} is added to ${item.id}, in which not every device is one that the board's maker names.`,
        why: "The board was tested with its own devices; what others do to its bar, and to the devices beside them, nobody knows.",
        todo: "Replace the strangers, or plan a new board.",
        spot: { thing: item, property: "devices-of-board-maker" },
        related,
      }),
    );
  return outcomes;
}
