import type { Paint } from "./picture.js";

/** What each paint is: a colour, or a variable of the page that shows the picture. */
export type Theme = Readonly<Record<Paint, string>>;

/** For paper, and for files that stand by themselves. */
export const light: Theme = {
  ink: "#1c252c",
  faint: "#5d6a73",
  paper: "#ffffff",
  panel: "#fafaf7",
  rule: "#c3c9cc",
  dc: "#8f3d10",
  ac: "#1d4a73",
  earth: "#3f6b2a",
  error: "#b3201b",
  warning: "#9a5b00",
  note: "#2f5f8a",
  band: "#e6ecd8",
  live: "#a3157f",
  first: "#1d4a73",
  second: "#8f3d10",
  third: "#3f6b2a",
  fourth: "#6a3d85",
};

export const dark: Theme = {
  ink: "#e3e7ea",
  faint: "#9aa6ae",
  paper: "#1b1f23",
  panel: "#21272c",
  rule: "#454e55",
  dc: "#f0a878",
  ac: "#8fc1ee",
  earth: "#a9d18e",
  error: "#ff8a80",
  warning: "#f5c26b",
  note: "#8fc1ee",
  band: "#2e3a2a",
  live: "#ff7ad9",
  first: "#8fc1ee",
  second: "#f0a878",
  third: "#a9d18e",
  fourth: "#d0a8e8",
};

export const highContrast: Theme = {
  ...dark,
  ink: "#ffffff",
  faint: "#ffffff",
  paper: "#000000",
  panel: "#000000",
  rule: "#ffffff",
  dc: "#ffd28a",
  ac: "#9ad4ff",
  earth: "#b8f08c",
  band: "#333333",
  live: "#ff8be0",
};

/**
 * For a page that has colours of its own: each paint is the variable `--sunwright-…` of the page, and the light theme
 * where the page has none.
 */
export const ofPage: Theme = Object.fromEntries(
  Object.entries(light).map(([paint, color]) => [paint, `var(--sunwright-${paint}, ${color})`]),
) as Record<Paint, string>;

export const themes = { light, dark, "high-contrast": highContrast, page: ofPage } as const;
