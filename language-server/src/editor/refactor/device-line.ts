import { kindRow, type PropertyRow } from "../../design/schema/index.js";
import { placeholder } from "../edits/placeholder.js";

/** What a new device is: a part in sight, or its kind with the figures that somebody has to find. */
export type Make = { readonly kind: string } & (
  | { readonly part: string }
  | { readonly part?: undefined; readonly supply?: "ac" | "dc" }
);

/** The sentence that declares a device. */
export function deviceLine(name: string, make: Make): string {
  if (make.part !== undefined) return `${make.kind} ${name} is ${make.part}`;
  const properties = (kindRow(make.kind)?.properties ?? [])
    .filter(({ essential, name: own, onSite }) => (essential && !onSite) || own === "rated-current")
    .map((property) => `${property.name}: ${known(property, make.supply)}`);
  return properties.length === 0 ? `${make.kind} ${name}` : `${make.kind} ${name} { ${properties.join("  ")} }`;
}

/** What the place already says of a device is no question. */
function known({ name }: PropertyRow, supply: "ac" | "dc" | undefined): string {
  return name === "supply" && supply ? supply : placeholder;
}
