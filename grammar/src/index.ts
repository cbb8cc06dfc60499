export * from "./dimensions.js";
