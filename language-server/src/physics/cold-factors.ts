import type { Given, Source } from "./figure.js";
import { assumed } from "./make.js";

/** What stands in for the voltage coefficient where a data sheet's is not known: a table of factors by temperature. */
export interface ColdFactors {
  /** Warmest band first. A band counts down to `from` (kelvin, included). Colder than the last: no factor. */
  readonly bands: readonly ColdBand[];
  /** For a module whose coefficient is known or not, where the lowest temperature is not. */
  readonly temperatureUnknown: Given;
}
export interface ColdBand {
  readonly from: number;
  readonly factor: Given;
}

/** Symbol of the factor in formulas. */
const symbol = "k";

/**
 * Bands from rows of [lowest whole °C of the band, factor]. A temperature between two printed bands (−5.4 °C between
 * −5 and −6) belongs to the colder one, which is why only the lower end counts.
 */
export function coldFactors(
  rows: readonly (readonly [celsius: number, factor: number])[],
  unknown: number,
  table: Source,
  unknownSource: Source,
): ColdFactors {
  return {
    bands: rows.map(([celsius, factor]) => ({
      from: celsius + 273.15,
      factor: assumed(
        symbol,
        factor,
        "ratio",
        "",
        `temperature coefficient of Uoc not stated: factor of crystalline silicon for a lowest temperature down to ${String(celsius).replace("-", "−")} °C`,
        table,
      ),
    })),
    temperatureUnknown: assumed(
      symbol,
      unknown,
      "ratio",
      "",
      "lowest temperature not stated: the factor for an unknown temperature",
      unknownSource,
    ),
  };
}

/** The factor for a lowest temperature in kelvin; undefined below the table's end. */
export function coldFactor(factors: ColdFactors, temperature: number): Given | undefined {
  // The temperatures of a table are whole degrees: a rounding error of the unit conversion must not change the band.
  return factors.bands.find((band) => temperature >= band.from - 1e-9)?.factor;
}
