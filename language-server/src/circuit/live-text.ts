import { formatFigure } from "../physics/working.js";
import type { Arrival } from "./live.js";

/** "S1 in any light through INV, until INV disconnects": how an arrival is said in every output. */
export function arrivalText(arrival: Arrival): string {
  const { source, through, wait } = arrival;
  if (through === "stored") {
    const time = wait
      ? `gone ${formatFigure(wait)} after all is open`
      : "discharge-wait not stated: its maker's sheet says how long";
    return `charge in the capacitors of ${source.item.id} (${time})`;
  }
  return (source.kind === "pv" ? `${source.id} in any light` : source.id) + wayText(arrival);
}

/** Several arrivals, those by the same way together: "S1 and S2 in any light through INV". */
export function arrivalTexts(arrivals: readonly Arrival[]): string[] {
  const byWay = new Map<string, Arrival[]>();
  for (const arrival of arrivals) {
    const key =
      arrival.through === "stored" ? arrivalText(arrival) : `${arrival.source.kind === "pv"}${wayText(arrival)}`;
    const same = byWay.get(key);
    if (same) same.push(arrival);
    else byWay.set(key, [arrival]);
  }
  return [...byWay.values()].map((same) => {
    const [first, ...others] = same;
    if (!first || others.length === 0) return first ? arrivalText(first) : "";
    const names = listed(same.map(({ source }) => source.id));
    return (first.source.kind === "pv" ? `${names} in any light` : names) + wayText(first);
  });
}

function wayText({ inverters, untilDisconnects, mayReturn }: Arrival): string {
  const way = inverters.length > 0 ? ` through ${inverters.map(({ id }) => id).join(" and ")}` : "";
  const end = untilDisconnects ? `, until ${untilDisconnects.id} disconnects` : "";
  const again = mayReturn ? ", dead now, may return at any time" : "";
  return `${way}${end}${again}`;
}

export function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names[names.length - 1]}`;
}
