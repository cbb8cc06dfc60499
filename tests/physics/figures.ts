import type { Given } from "../../language-server/src/physics/figure.js";
import { counted, stated } from "../../language-server/src/physics/make.js";

/** Short ways to write given figures in tests; values in the unit that the name says. */
export const volts = (value: number, symbol = "Uoc"): Given => stated(symbol, value, "voltage", "V", symbol);
export const amperes = (value: number, symbol = "Isc"): Given => stated(symbol, value, "current", "A", symbol);
export const metres = (value: number, symbol = "L"): Given => stated(symbol, value, "length", "m", symbol);
export const celsiusDegrees = (value: number, symbol = "T"): Given =>
  stated(symbol, value + 273.15, "temperature", "degC", symbol);
export const percentPerKelvin = (value: number, symbol = "β"): Given =>
  stated(symbol, value / 100, "ratio-per-kelvin", "%/K", symbol);
export const voltsPerKelvin = (value: number, symbol = "β"): Given =>
  stated(symbol, value, "voltage-per-kelvin", "V/K", symbol);
export const amperesPerKelvin = (value: number, symbol = "α"): Given =>
  stated(symbol, value, "current-per-kelvin", "A/K", symbol);
export const ohmsPerKilometre = (value: number, symbol = "r"): Given =>
  stated(symbol, value / 1000, "resistance-per-length", "ohm/km", symbol);
export const wattsPerSquareMetre = (value: number, symbol = "G"): Given =>
  stated(symbol, value, "irradiance", "W/m2", symbol);
export const ratio = (value: number, symbol = "f"): Given => stated(symbol, value, "ratio", "", symbol);
export const count = (value: number, symbol = "n"): Given => counted(symbol, value, symbol);
export const watts = (value: number, symbol = "P"): Given => stated(symbol, value, "power", "W", symbol);
export const ohms = (value: number, symbol = "Z"): Given => stated(symbol, value, "resistance", "ohm", symbol);
export const seconds = (value: number, symbol = "t"): Given => stated(symbol, value, "time", "s", symbol);
export const milliamperes = (value: number, symbol = "IΔn"): Given =>
  stated(symbol, value / 1000, "current", "mA", symbol);
export const squareMillimetres = (value: number, symbol = "S"): Given =>
  stated(symbol, value * 1e-6, "area", "mm2", symbol);
