import { expect, test } from "vitest";
import { liveWhateverIsOpened } from "../../language-server/src/circuit/always-live.js";
import type { Circuit } from "../../language-server/src/circuit/circuit.js";
import { withDevice } from "../../language-server/src/circuit/with-device.js";
import { wired } from "./from-text.js";

/** The same house without and with a main switch. */
const house = (main: string): string => `
part Switch is isolator { supply: ac  poles: 2 }
part Fuse is breaker { poles: 2 }
supply GRID { voltage: 230 V  phases: 1 }
inverter INV { ac { phases: 1 }  battery { } }
battery BAT { built-in-isolator: no }
isolator Q1 is Switch
board CU {
    ${main}
    way 1: breaker K1 is Fuse serves INV
}
run W1 from GRID to CU
run W2 from CU.K1 to Q1
run W3 from Q1 to INV.ac
run W4 from BAT to INV.battery
`;

/** Terminals with the sources that no device parts from them, but for those of the switch itself. */
function live(circuit: Circuit, own: string): string[] {
  return [...liveWhateverIsOpened(circuit)]
    .filter(([{ item }]) => item.id !== own)
    .map(([{ id }, arrivals]) => `${id}: ${arrivals.map(({ source }) => source.id).sort()}`)
    .sort();
}

test("a device that is thought into a circuit does there what it does once it is written", () => {
  const { circuit, terminal, item } = wired(house(""));
  const before = live(circuit, "");
  const joint = terminal("CU.in").links.find(({ by }) => by === item("CU"))!;
  const written = wired(house("isolator MS is Switch"));
  const device = written.item("CU.MS");
  const thought = live(withDevice(circuit, joint, device), "CU.MS");
  expect(thought).toEqual(live(written.circuit, "CU.MS"));
  expect(before).toContain("CU.bar: GRID");
  expect(thought.filter((each) => each.startsWith("CU.bar"))).toEqual([]);
  expect(live(circuit, ""), "the circuit itself is as before").toEqual(before);
});
