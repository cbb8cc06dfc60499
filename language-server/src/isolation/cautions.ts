/**
 * Said with every answer about what is live. The answers are for planning: how dead is proved, and by whom, is a matter
 * of the trade's own safe-isolation procedure.
 */
export const cautions: readonly string[] = [
  "As true as the text, if it is wired as written: a wrong connection, a wrong label or what somebody added since is not in it.",
  "Prove dead at the point of work, every time and in every mode.",
  "PV modules cannot be switched off: up to the first open device their cables are live in any light. Battery cells are always live.",
  "Not traced: faults, single conductors, neutral and earth by themselves, a generating set that somebody plugs in.",
];
