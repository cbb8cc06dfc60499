import type { Assessment } from "../assessment/assessment.js";
import type { BackupConnection, BoardCircuit, NeutralEarthLink, Plant } from "../circuit/plant.js";
import { given } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { formatFigure } from "../physics/working.js";
import type { GoesOn, NeutralEarthReport } from "./report.js";

/** What each backup port feeds when the public supply is gone. */
export function goesOn({ plants }: Assessment): GoesOn[] {
  return plants.flatMap(({ inverters }) =>
    inverters.flatMap(({ inverter, backup }) => (backup ? [fedBy(inverter, backup)] : [])),
  );
}

function fedBy(inverter: Item, { port, circuits, loads }: BackupConnection): GoesOn {
  const power = given(port, "rated-power");
  const served = new Set(circuits.flatMap(({ serves }) => serves ?? []));
  const named = [...circuits.map(circuitText), ...loads.filter((load) => !served.has(load)).map(({ id }) => id)];
  const upTo = power ? `up to ${formatFigure(power)}` : "rated-power not stated";
  const text =
    named.length > 0
      ? `${inverter.id} feeds ${named.join(", ")} (${upTo}); overload, or a fault that no device clears, may end it.`
      : `${inverter.id} has a backup port that feeds nothing (${upTo}).`;
  return {
    inverter: inverter.id,
    ...(power && { power: formatFigure(power) }),
    circuits: circuits.map(({ device }) => device.id),
    text,
  };
}

function circuitText({ device, serves, servesText }: BoardCircuit): string {
  const what = serves?.id ?? (servesText === undefined ? undefined : `"${servesText}"`);
  return what === undefined ? device.id : `${device.id} (${what})`;
}

/** Where neutral is tied to earth in each mode; only where something goes on without the grid. */
export function neutralEarthOf({ plants }: Assessment): NeutralEarthReport[] {
  return plants.flatMap((plant) => {
    if (!plant.inverters.some(({ backup }) => backup)) return [];
    const { grid, island } = plant.neutralEarth;
    return [
      { supply: "grid" as const, text: `With the grid: ${linksText(grid, plant)}` },
      { supply: "island" as const, text: `In an island: ${linksText(island, plant)}${electrodesText(plant)}` },
    ];
  });
}

function linksText(links: readonly NeutralEarthLink[], { id }: Plant): string {
  if (links.length === 0) return `nothing ties neutral to earth (${id}).`;
  return `neutral is tied to earth by ${links.map(linkText).join(" and by ")}.`;
}

function linkText({ link, supply, closed, missing }: NeutralEarthLink): string {
  const by = link?.id ?? (supply ? `the supplier's link of ${supply.id}` : "a link");
  if (closed === "yes") return by;
  return missing ? `perhaps ${by} (${missing.property} of ${missing.thing.id} is not stated)` : `perhaps ${by}`;
}

function electrodesText({ electrodes }: Plant): string {
  if (electrodes.length === 0) return " No earth electrode of its own is written.";
  const named = electrodes.map((electrode) => {
    const resistance = given(electrode, "resistance");
    return resistance ? `${electrode.id} (${formatFigure(resistance)})` : `${electrode.id} (resistance not stated)`;
  });
  return ` Earth electrode: ${named.join(", ")}.`;
}
