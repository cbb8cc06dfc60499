export * from "./dimensions.js";
export * from "./lexical.js";
export * from "./markdown-fence.js";
export * from "./nearest-unit.js";
export * from "./quantity.js";
export * from "./quantity-pattern.js";
export * from "./textmate.js";
export * from "./units.js";
