import type { Assessment } from "../assessment/assessment.js";
import { fact, textOf } from "../design/facts.js";
import type { TitleBlock } from "./diagram.js";
import { countedChecks } from "./marks.js";

/** Printed on every sheet. What a designer must not forget is never an option. */
const standing = [
  "Design aid, not a certificate.",
  "PV modules cannot be switched off: their cables are live whenever there is light.",
  "Prove dead at the point of work. Local rules and licensed practice come first.",
];

export function titleBlockOf(assessment: Assessment): TitleBlock {
  const { design, ruleSet, whatIf } = assessment;
  const { site } = design;
  const date = site && fact(site, "date")?.value;
  const faults = design.problems.filter(({ severity }) => severity === "error").length;
  const cautions = [...standing];
  if (faults > 0)
    cautions.unshift(
      `The text has ${faults === 1 ? "a mistake" : `${faults} mistakes`}: what could not be read is not drawn.`,
    );
  if (whatIf) cautions.unshift("Drawn as if the text said something else: what is supposed is not the design.");
  return {
    site: site?.declaration.title ?? "Site without a name",
    ruleSet: ruleSet.title,
    editions: ruleSet.editions.slice(0, 1).map(({ title, edition }) => `${title}, ${edition}`),
    revision: site && textOf(site, "revision"),
    date: date?.kind === "day" ? date.value : undefined,
    designer: site && textOf(site, "designer"),
    address: site && textOf(site, "address"),
    checks: countedChecks(assessment),
    cautions,
  };
}
