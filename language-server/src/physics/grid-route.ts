import type { Figure } from "./figure.js";

/** The two ways to a connection, as the words of the supply's `grid-route`. */
export type GridRoute = "connect-and-notify" | "apply-first";

/**
 * Which way an installation has to take, by the largest registered current per line (A, every unit counted, those that
 * were there before too) and the limit up to which notifying is enough (A, itself included).
 */
export function gridRoute(registered: Figure, limit: Figure): GridRoute {
  // A rounding error of the sum must not send a unit of exactly the limit the long way.
  return registered.value <= limit.value * (1 + 1e-9) ? "connect-and-notify" : "apply-first";
}
