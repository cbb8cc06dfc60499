/** Test classes that carry a share of the lightning current itself. */
const carriesLightning = new Set(["type-1", "type-1-2"]);

/** Whether the site's lightning protection asks for a device that carries lightning current. */
export function asksForType1(lightningProtection: string | undefined): boolean {
  return lightningProtection === "not-separated";
}

export function isType1(type: string | undefined): boolean {
  return type !== undefined && carriesLightning.has(type);
}

/** Whether a device of this type may protect an array on such a site. */
export function suits(type: string | undefined, lightningProtection: string | undefined): boolean {
  return isType1(type) || (type === "type-2" && !asksForType1(lightningProtection));
}
