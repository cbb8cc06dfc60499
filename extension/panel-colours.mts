import { dark, highContrast, light, type Theme } from "../language-server/src/drawing/themes.js";

/** What the editor's own theme decides, whatever its kind. */
const own: Readonly<Partial<Record<keyof Theme, string>>> = {
  ink: "--vscode-editor-foreground",
  paper: "--vscode-editor-background",
  panel: "--vscode-editorWidget-background",
};

/** Where the reader has colours of their own, everything is told by words and shapes. */
const system: Readonly<Partial<Record<keyof Theme, string>>> = {
  paper: "Canvas",
  panel: "Canvas",
  band: "Canvas",
  rule: "GrayText",
};

/** The paints of the picture for each kind of theme, as variables of the page: the drawing's own colours are proved to be readable. */
export function panelColours(): string {
  const highContrastLight: Theme = { ...light, ink: "#000000", faint: "#000000", rule: "#000000", panel: "#ffffff" };
  const kinds: readonly (readonly [string, Theme])[] = [
    ["body", light],
    ["body.vscode-dark", dark],
    ["body.vscode-high-contrast", highContrast],
    ["body.vscode-high-contrast-light", highContrastLight],
  ];
  return [
    ...kinds.map(([selector, theme]) =>
      block(selector, theme, (paint, colour) => {
        const variable = own[paint];
        return variable ? `var(${variable}, ${colour})` : colour;
      }),
    ),
    `@media (forced-colors: active) {\n${block("body", light, (paint) => system[paint] ?? "CanvasText")}}\n`,
  ].join("");
}

function block(selector: string, theme: Theme, value: (paint: keyof Theme, colour: string) => string): string {
  const lines = Object.entries(theme).map(
    ([paint, colour]) => `  --sunwright-${paint}: ${value(paint as keyof Theme, colour)};\n`,
  );
  return `${selector} {\n${lines.join("")}}\n`;
}
