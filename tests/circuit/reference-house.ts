import { readFileSync } from "node:fs";

/**
 * The text of the house that the acceptance questions are asked about. Q5 sits on a way of the old board, Q6 is its main
 * switch, Q7 the switch of the backup board, K1 the neutral–earth relay, E2 the own electrode.
 */
export const referenceHouse = readFileSync(new URL("../acceptance/reference-house.sun", import.meta.url), "utf8");
