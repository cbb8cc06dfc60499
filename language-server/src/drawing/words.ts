import { flagOf, given, givenRange, textOf, wordOf } from "../design/facts.js";
import type { Item, Run, Thing } from "../design/things.js";
import { formatNumber, formatValue, statedDigits } from "../physics/display.js";
import type { Figure, Given } from "../physics/figure.js";
import { lengthOf } from "../rules/run-facts.js";
import type { Current } from "./diagram.js";
import type { RunDrop } from "./run-drops.js";
import { spokenLine } from "./spoken.js";

/** What is printed beside a symbol: the name, then what a reader of the drawing has to know, briefly. */
export function labelOf(item: Item): string[] {
  return [item.name, ...factsOf(item).filter((line) => line !== "")];
}

/** As one line, for devices in a row of a board. */
export function shortFacts(item: Item): string {
  return factsOf(item, true)
    .filter((line) => line !== "")
    .join(" ");
}

function factsOf(item: Item, brief = false): string[] {
  const part = item.part ? item.part.name : "";
  const asFound = flagOf(item, "existing") && !brief ? "existing" : "";
  switch (item.kind) {
    case "string":
      return [`${count(item)}${part || "?"}`, stringPower(item), plane(item), wordOf(item, "mounting") ?? ""];
    case "inverter":
      return [part, ...portFacts(item), asFound];
    case "battery":
      return [`${item.count > 1 ? count(item) : ""}${part}`, batteryEnergy(item), textOf(item, "location") ?? ""];
    case "supply":
      return [
        joined(" ", lines(item), of(item, "voltage")),
        wordOf(item, "earthing") ?? "",
        prefixed("service fuse ", of(item, "service-fuse")),
        prefixed("Ze ", of(item, "external-loop-impedance")),
        prefixed("Ipf ", of(item, "prospective-fault-current")),
      ];
    case "board":
      return [joined(" · ", part, of(item, "rated-current"), lines(item)), asFound];
    case "generator":
      return [part, joined(" ", of(item, "rated-power"), lines(item)), wordOf(item, "energy-source") ?? ""];
    case "load":
      return [of(item, "power") || of(item, "current")];
    case "earthing":
      return [prefixed("earthing ", of(item, "main-conductor")), prefixed("bonding ", of(item, "main-bonding"))];
    case "electrode":
      return [wordOf(item, "electrode-type") ?? "", prefixed("RA ", of(item, "resistance")), of(item, "conductor")];
    case "spd":
      return [
        brief ? "" : part,
        joined(" ", words(wordOf(item, "type")), prefixed("Uc ", of(item, "max-continuous-voltage"))),
        prefixed("Up ", of(item, "protection-level")),
      ];
    case "meter":
      return [brief ? "" : part, joined(" ", of(item, "rated-current"), lines(item)), wordOf(item, "measures") ?? ""];
    case "terminal-block":
      return [brief ? "" : part, of(item, "rated-current")];
    case "combiner":
      return [joined(" · ", part, of(item, "rated-voltage")), textOf(item, "location") ?? ""];
    default:
      return deviceFacts(item, brief, part, asFound);
  }
}

/** Switching and protective devices: rating, poles, and what else they are chosen by. */
function deviceFacts(item: Item, brief: boolean, part: string, asFound: string): string[] {
  const curve = wordOf(item, "curve") ?? "";
  const current = of(item, "rated-current");
  const rating = curve && current ? `${curve}${current.replace(" A", "")} A` : joined(" ", curve, current);
  const residual = joined(" ", words(wordOf(item, "type"), "type "), of(item, "residual-current"));
  const voltage = item.kind === "isolator" || item.kind === "fuse" ? of(item, "rated-voltage") : "";
  return [
    brief ? "" : part,
    joined(" ", rating, voltage, polesOf(item)),
    item.kind === "rcd" || item.kind === "rcbo" ? residual : "",
    brief ? "" : joined(" ", wordOf(item, "utilisation-category"), flagOf(item, "lockable") ? "lockable" : ""),
    brief ? "" : (textOf(item, "location") ?? ""),
    asFound,
  ];
}

function portFacts(inverter: Item): string[] {
  const port = inverter.children.find(({ kind }) => kind === "ac");
  if (!port) return [];
  return [joined(" ", of(port, "rated-power"), lines(port)), prefixed("max ", of(port, "max-current"))];
}

function stringPower(string: Item): string {
  const power = string.part && given(string.part, "power");
  if (!power || !Number.isFinite(string.count)) return "";
  return formatValue(power.value * string.count, "power", "kW", 4);
}

function plane(string: Item): string {
  const tilt = of(string, "tilt");
  const azimuth = of(string, "azimuth");
  return tilt && azimuth ? `${tilt} / ${azimuth}` : tilt;
}

function batteryEnergy(battery: Item): string {
  const energy = given(battery, "energy");
  const total = energy ? formatValue(energy.value * battery.count, "energy", "kWh", 4) : "";
  const range = givenRange(battery, "voltage-range");
  const series = battery.count > 1 && wordOf(battery, "joined") === "in-series" ? battery.count : 1;
  const volts = range ? `${volt(range.low, series)}..${volt(range.high, series)} V` : "";
  return joined(" · ", total, volts);
}

function volt({ value }: Given, times: number): string {
  return formatNumber(value * times, 4);
}

function lines(item: Item): string {
  const phases = given(item, "phases")?.value;
  return phases === undefined ? "" : `${phases}~`;
}

function polesOf(item: Item): string {
  const poles = given(item, "poles")?.value;
  if (poles === undefined) return "";
  return `${poles}P${flagOf(item, "switched-neutral") ? "+N" : ""}`;
}

function count(item: Item): string {
  return `${Number.isFinite(item.count) ? item.count : "?"} × `;
}

function words(word: string | undefined, prefix = ""): string {
  return word === undefined ? "" : `${prefix}${word.replace("type-", "type ")}`;
}

function of(thing: Thing, property: string): string {
  const figure = given(thing, property);
  return figure ? stated(figure) : "";
}

function stated({ value, dimension, unit }: Figure): string {
  return formatValue(value, dimension, unit, statedDigits);
}

function prefixed(prefix: string, words: string): string {
  return words === "" ? "" : `${prefix}${words}`;
}

export function joined(by: string, ...pieces: readonly (string | undefined)[]): string {
  return pieces.filter((piece) => piece !== undefined && piece !== "").join(by);
}

/** Name, sort of current and length; cable; drop. */
export function runLabel(run: Run, current: Exclude<Current, "both">, drop: RunDrop | undefined): string[] {
  const length = lengthOf(run);
  const area = run.cable ? of(run.cable, "conductor-area") : "";
  return [
    joined(" · ", `${run.id} ${currentWord(current)}`, length && stated(length)),
    joined(" ", run.cable?.name, area),
    drop ? dropText(drop) : "",
  ].filter((line) => line !== "");
}

/** Always with two decimals: labels keep their width while a design changes, and with it everything its place. */
function dropText({ word, volts, share }: RunDrop): string {
  const percent = share ? `, ${(share.value * 100).toFixed(2)} %` : "";
  return `${word} ${volts.value.toFixed(2)} V${percent}`;
}

function currentWord(current: Current): string {
  return current === "dc" ? "d.c." : current === "ac" ? "a.c." : current === "earth" ? "earth" : "d.c. and a.c.";
}

/** A sentence for those who hear the picture. */
export function described(item: Item): string {
  const title = item.row?.title ?? item.kind;
  return joined(", ", item.id === title ? "" : `${item.id}: ${title}`, ...labelOf(item).slice(1).map(spokenLine));
}
