/** Printed under every result. What a designer must not forget is never an option. */
export const caution =
  "Design aid, no certificate. PV modules cannot be switched off: their cables are live whenever there is light. " +
  "Prove dead at the point of work. Local rules and licensed practice come first.";
