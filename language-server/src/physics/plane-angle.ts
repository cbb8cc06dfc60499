import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

export interface Plane {
  /** Slope from horizontal and compass direction, rad. */
  readonly tilt: Figure;
  readonly azimuth: Figure;
}

const sphere: Source = { title: "angle between two directions by the haversine formula", basis: "arithmetic" };
const formula = "2 · arcsin √(sin²((β1 − β2) / 2) + sin β1 · sin β2 · sin²((γ1 − γ2) / 2))";

/** Angle between two module planes, rad: nothing between two flat ones, whichever way they are said to face. */
export function planeAngle(first: Plane, second: Plane): Derived {
  const [one, other] = [first.tilt.value, second.tilt.value];
  const slope = Math.sin((one - other) / 2) ** 2;
  const turn = Math.sin((first.azimuth.value - second.azimuth.value) / 2) ** 2;
  const share = Math.min(slope + Math.sin(one) * Math.sin(other) * turn, 1);
  const terms = [as("β1", first.tilt), as("β2", second.tilt), as("γ1", first.azimuth), as("γ2", second.azimuth)];
  return derive("Δ", 2 * Math.asin(Math.sqrt(share)), "angle", "deg", formula, terms, sphere);
}
