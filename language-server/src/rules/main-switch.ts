import type { Circuit, Link } from "../circuit/circuit.js";
import { terminalOf } from "../circuit/circuit.js";
import type { Plant } from "../circuit/plant.js";
import { polesOf } from "../circuit/poles.js";
import { withDevice } from "../circuit/with-device.js";
import type { Item } from "../design/things.js";
import { lineVoltage } from "../physics/ac-current.js";
import { candidates } from "./added-device.js";
import { takesDevices } from "./free-ways.js";
import type { Judge } from "./judge.js";
import type { Fix, Outcome } from "./rule.js";
import { eachOf } from "./several.js";
import { treeAt } from "./supply-way.js";
import { currentThrough } from "./through-current.js";

/**
 * Main switches in scope for a board that has none. Each is tried in the circuit: `isolates` says what the rule about
 * isolation says of the board with it.
 */
export function mainSwitchFixes(
  plant: Plant,
  circuit: Circuit,
  board: Item,
  isolates: (circuit: Circuit) => Outcome,
  judge: Judge,
): Fix[] {
  const view = plant.boards.find(({ item }) => item === board);
  const joint = jointOf(circuit, board);
  if (!view || !joint || view.mainSwitches.length > 0 || !takesDevices(board)) return [];
  const some = candidates(judge, ["isolator"], (part) => {
    const device = { ...part, parent: board };
    const own = eachOf(
      () => suits(device, judge),
      ...view.feeds.map((feed) => () => carries(device, plant, feed, judge)),
      ...plant.supplies.map((supply) => () => inEveryLine(device, board, supply, judge)),
    );
    // A whole circuit is gone through for each device: only for those that would do by themselves.
    return own.some(({ outcome }) => outcome !== "pass") ? own : [...own, isolates(withDevice(circuit, joint, device))];
  });
  return some.map(({ part, preview }) => ({
    title: `Put an isolator, ${part.name}, into ${board.id} as its main switch`,
    preview,
    does: "nest-devices",
    thing: board,
    devices: [{ part }],
  }));
}

/** What joins the incoming terminal of a board to its bar. */
function jointOf(circuit: Circuit, board: Item): Link | undefined {
  const bar = terminalOf(circuit, board, "bar");
  return terminalOf(circuit, board, "in")?.links.find(({ a, b, by }) => by === board && (a === bar || b === bar));
}

/** Whoever works behind it relies on nobody switching it on again. */
function suits(device: Item, judge: Judge): Outcome {
  if (judge.needWord(device, "supply") !== "ac") return judge.notApplicable("made for d.c.");
  return judge.needFlag(device, "lockable") ? judge.holds("can be locked open") : judge.notApplicable("takes no lock");
}

function carries(device: Item, plant: Plant, feed: Plant["boards"][number]["feeds"][number], judge: Judge): Outcome[] {
  const [rated] = judge.need([device, "rated-current"]);
  const { current, unknown } = currentThrough(treeAt(plant, feed.root), feed.path.to, judge);
  if (!current) return [...unknown];
  if (current.value > rated.value) return [judge.notApplicable("more may flow through it")];
  return [judge.pass(current, rated, device.id), ...unknown];
}

/** A board that does not say how many lines it has is taken for one of as many as the supply. */
function inEveryLine(device: Item, board: Item, supply: Item, judge: Judge): Outcome {
  const [rated, voltage] = judge.need([device, "rated-voltage"], [supply, "voltage"], [device, "poles"]);
  const phases = judge.quantity(board, "phases") ?? judge.need([supply, "phases"])[0];
  const isThreePhase = phases.value === 3;
  const { opened = 0 } = polesOf(device, isThreePhase ? "ac-three-phase" : "ac");
  if (opened < (isThreePhase ? 4 : 2)) return judge.notApplicable("it leaves a live conductor joined");
  const across = isThreePhase ? lineVoltage(voltage) : voltage;
  return across.value <= rated.value
    ? judge.pass(across, rated, device.id)
    : judge.notApplicable("it stands less than the voltage of the supply");
}
