import { boardKinds } from "./board.js";
import { deviceKinds } from "./devices.js";
import { earthingKinds } from "./earthing.js";
import { portKinds } from "./ports.js";
import type { KindRow } from "./row.js";
import { storageKinds } from "./storage.js";

/** From the inverter to the supply and to earth, in the order in which the reference page shows them. */
export const mainsKinds: readonly KindRow[] = [
  ...portKinds,
  ...storageKinds,
  ...boardKinds,
  ...deviceKinds,
  ...earthingKinds,
];
