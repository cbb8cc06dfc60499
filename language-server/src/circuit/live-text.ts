import { formatFigure } from "../physics/working.js";
import type { Arrival } from "./live.js";

/** "S1 through INV, until INV disconnects": how an arrival is said in every output. */
export function arrivalText({ source, through, inverters, untilDisconnects, mayReturn, wait }: Arrival): string {
  if (through === "stored") {
    const time = wait
      ? `gone ${formatFigure(wait)} after all is open`
      : "discharge-wait not stated: its maker's sheet says how long";
    return `charge in the capacitors of ${source.item.id} (${time})`;
  }
  const by = source.kind === "pv" ? `${source.id} in any light` : source.id;
  const way = inverters.length > 0 ? ` through ${inverters.map(({ id }) => id).join(" and ")}` : "";
  const end = untilDisconnects ? `, until ${untilDisconnects.id} disconnects` : "";
  const again = mayReturn ? ", dead now, may return at any time" : "";
  return `${by}${way}${end}${again}`;
}
