import * as l10n from "@vscode/l10n";
import type { ShownConditions } from "../src/panel/messages";
import { element } from "./dom";

interface Scale {
  readonly name: keyof ShownConditions;
  readonly label: string;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly step: number;
}
/** As far as the server computes; the same limits are told there. */
function scales(): readonly Scale[] {
  return [
    { name: "irradiance", label: l10n.t("Irradiance"), unit: "W/m²", from: 50, to: 1500, step: 10 },
    { name: "cell", label: l10n.t("Cell temperature"), unit: "°C", from: -45, to: 100, step: 1 },
  ];
}

/** Under what light and how hot: a slider and a number each, which say the same. */
export class Conditions {
  readonly box = element("fieldset", { class: "conditions" }, element("legend", {}, l10n.t("Conditions")));
  private readonly message = element("p", { class: "refused", role: "alert", hidden: true });
  private readonly inputs = new Map<keyof ShownConditions, readonly HTMLInputElement[]>();

  constructor(
    private values: ShownConditions,
    private readonly choose: (values: ShownConditions) => void,
  ) {
    for (const scale of scales()) this.box.append(this.row(scale));
    const standard = element(
      "button",
      { type: "button", title: "1000 W/m², 25 °C" },
      l10n.t("Standard test conditions"),
    );
    standard.addEventListener("click", () => this.take({ irradiance: 1000, cell: 25 }));
    this.box.append(standard, this.message);
  }

  private row(scale: Scale): HTMLElement {
    const { name, label, unit, from, to, step } = scale;
    const bounds = { min: from, max: to, value: this.values[name] };
    const slider = element("input", {
      type: "range",
      step,
      ...bounds,
      "aria-label": l10n.t("{0} in {1}", label, unit),
    });
    const number = element("input", { type: "number", step: "any", ...bounds, id: `condition-${name}` });
    slider.addEventListener("input", () => this.take({ ...this.values, [name]: slider.valueAsNumber }));
    number.addEventListener("input", () => this.read(scale, number));
    this.inputs.set(name, [slider, number]);
    return element(
      "div",
      { class: "condition" },
      element("label", { for: number.id }, label),
      slider,
      number,
      element("span", {}, unit),
    );
  }

  private read({ name, label, unit, from, to }: Scale, input: HTMLInputElement): void {
    const value = input.valueAsNumber;
    const isPossible = value >= from && value <= to;
    input.setAttribute("aria-invalid", String(!isPossible));
    this.message.hidden = isPossible;
    if (isPossible) this.take({ ...this.values, [name]: value }, input);
    else
      this.message.textContent = l10n.t(
        "{0}: a number from {1} to {2} {3}. The chart still shows {4} {3}.",
        label,
        from,
        to,
        unit,
        this.values[name],
      );
  }

  /** What somebody is typing is left as it is typed. */
  private take(values: ShownConditions, typed?: HTMLInputElement): void {
    this.values = values;
    this.message.hidden = true;
    for (const [name, inputs] of this.inputs)
      for (const input of inputs) {
        if (input === typed) continue;
        input.value = String(values[name]);
        input.removeAttribute("aria-invalid");
      }
    this.choose(values);
  }
}
