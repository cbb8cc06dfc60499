import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** How hot the cells get, K. */

const byMounting: Source = { title: "cell temperature as air temperature plus a rise by mounting", basis: "practice" };

/** Hottest cells from the hottest air (K) and the rise that the mounting causes in full sun (K difference). */
export function hottestCellByMounting(highestAir: Figure, rise: Figure): Derived {
  const terms = [as("Tair", highestAir), as("ΔT", rise)];
  return derive("Tmax", highestAir.value + rise.value, "temperature", "degC", "Tair + ΔT", terms, byMounting);
}

const nominal: Source = {
  title: "IEC 61215",
  clause: "nominal operating cell temperature at 800 W/m², 20 °C air, 1 m/s wind, open rack",
  basis: "memory",
};

/** Cells at an irradiance (W/m²) from the module's nominal operating cell temperature (K); for an open rack. */
export function cellByNominalTemperature(air: Figure, irradiance: Figure, nominalOperating: Figure): Derived {
  const perWatt = (nominalOperating.value - 293.15) / 800;
  const terms = [as("Tair", air), as("NOCT", nominalOperating), as("G", irradiance)];
  const value = air.value + perWatt * irradiance.value;
  return derive("T", value, "temperature", "degC", "Tair + (NOCT − 20 °C) / 800 W/m² · G", terms, nominal);
}
