import type { Circuit, Terminal } from "../circuit/circuit.js";
import { isBeforeBar } from "../circuit/inside.js";
import { given } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { BoardInside, BoxInside, Device, Row, Section } from "./diagram.js";
import { symbolOf } from "./symbol-of.js";
import { described, joined, shortFacts } from "./words.js";

/** Whether a wire of the picture lands on a terminal. */
export type IsWired = (terminal: Terminal | undefined) => boolean;

/** What is drawn inside a board's frame. */
export function insideOfBoard(board: Item, circuit: Circuit, isWired: IsWired): BoardInside {
  const mains: Device[] = [];
  const sections: Section[] = [];
  let loose: Row[] | undefined;
  for (const child of board.children) {
    if (child.kind === "link") continue;
    if (isBeforeBar(child)) mains.push(deviceOf(child));
    else if (child.kind === "rcd" && child.children.length > 0) {
      loose = undefined;
      sections.push({ rcd: deviceOf(child), rows: child.children.map((each) => rowOf(each, circuit, isWired)) });
    } else {
      if (!loose) {
        loose = [];
        sections.push({ rows: loose });
      }
      loose.push(rowOf(child, circuit, isWired));
    }
  }
  return { is: "board", mains, incoming: `${board.id}.in`, sections, unused: unusedWays(board) };
}

/** A combiner's fuses, or what is built into a battery, between its own terminals. */
export function insideOfBox(item: Item, circuit: Circuit, isWired: IsWired): BoxInside | undefined {
  if (item.kind === "combiner")
    return { is: "combiner", rows: item.children.map((child) => rowOf(child, circuit, isWired, "in")), chain: [] };
  const chain = item.children.filter((child) => child.row?.terminals.includes("in")).map(deviceOf);
  return item.kind === "battery" && chain.length > 0 ? { is: "battery", rows: [], chain } : undefined;
}

function rowOf(item: Item, circuit: Circuit, isWired: IsWired, outer = "out"): Row {
  const { way, serves } = item.declaration;
  const terminal = circuit.terminals.get(`${item.id}.${outer}`);
  const servesText = serves && ("kind" in serves ? serves.value : serves.path.join("."));
  return {
    device: deviceOf(item),
    way: way?.value,
    serves: servesText,
    port: isWired(terminal) ? terminal?.id : undefined,
  };
}

function deviceOf(item: Item): Device {
  const facts = shortFacts(item);
  return {
    id: item.id,
    symbol: symbolOf(item),
    label: facts === "" ? [item.name] : [item.name, facts],
    description: described(item),
  };
}

/** "ways 3–7, 10–12 free"; undefined where the number of ways is not known, or none is free. */
function unusedWays(board: Item): string | undefined {
  const ways = given(board, "ways")?.value;
  // No board has thousands of ways: a slip of the keyboard must not make the picture wait.
  if (ways === undefined || ways > 1000) return undefined;
  const taken = new Set<number>();
  const take = (item: Item): void => {
    if (item.declaration.way) taken.add(item.declaration.way.value);
    for (const child of item.children) take(child);
  };
  take(board);
  const ranges: string[] = [];
  let free = 0;
  for (let from = 1; from <= ways; from++) {
    if (taken.has(from)) continue;
    let to = from;
    while (to < ways && !taken.has(to + 1)) to++;
    free += to - from + 1;
    ranges.push(from === to ? `${from}` : `${from}–${to}`);
    from = to;
  }
  if (free === 0) return undefined;
  const shown = ranges.length > 6 ? `${ranges.slice(0, 6).join(", ")} …` : ranges.join(", ");
  return joined(" ", free === 1 ? "way" : "ways", shown, "unused");
}
