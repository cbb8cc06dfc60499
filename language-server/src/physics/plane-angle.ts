import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

export interface Plane {
  /** Slope from horizontal and compass direction, rad. */
  readonly tilt: Figure;
  readonly azimuth: Figure;
}

const sphere: Source = { title: "angle between two directions by the cosine rule of the sphere", basis: "arithmetic" };
const formula = "arccos(cos β1 · cos β2 + sin β1 · sin β2 · cos(γ1 − γ2))";

/** Angle between two module planes, rad: nothing between two flat ones, whichever way they are said to face. */
export function planeAngle(first: Plane, second: Plane): Derived {
  const [one, other] = [first.tilt.value, second.tilt.value];
  const turn = first.azimuth.value - second.azimuth.value;
  const cosine = Math.cos(one) * Math.cos(other) + Math.sin(one) * Math.sin(other) * Math.cos(turn);
  const terms = [as("β1", first.tilt), as("β2", second.tilt), as("γ1", first.azimuth), as("γ2", second.azimuth)];
  return derive("Δ", Math.acos(Math.min(Math.max(cosine, -1), 1)), "angle", "deg", formula, terms, sphere);
}
