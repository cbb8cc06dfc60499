export * from "./dimensions.js";
export * from "./nearest-unit.js";
export * from "./quantity.js";
export * from "./units.js";
