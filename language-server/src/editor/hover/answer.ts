import * as l10n from "@vscode/l10n";
import type { Assessment, Check } from "../../assessment/assessment.js";
import type { DepartureDeclaration, ExpectationDeclaration, Mention, Property } from "../../design/model.js";
import type { Thing } from "../../design/things.js";
import { plain } from "../markdown.js";
import { checksOf, thingsOf } from "../things-of.js";
import { type Links, marginText, verdictText, workingText } from "./check.js";
import { valueText } from "./thing.js";

/** What a `departure` departs from, or an `expect` foretells: the finding itself with its working, or that there is none. */
export function answerText(
  assessment: Assessment,
  declaration: DepartureDeclaration | ExpectationDeclaration,
  links: Links,
): string | undefined {
  const thing = declaration.target && thingAt(assessment, declaration.target);
  if (!thing) return undefined;
  const found = checksOf(assessment, thing).filter(
    ({ rule, outcome }) =>
      rule.id === declaration.rule && (outcome.outcome === "departure" || outcome.outcome === "finding"),
  );
  if (found.length === 0)
    return l10n.t("There is no finding of {0} on {1}.", plain(declaration.rule), plain(nameOf(declaration)));
  const lines = found.map((check) => findingText(check, links));
  if (declaration.declares === "departure") lines.push(...propertyLines(declaration.properties));
  lines.push(workingText(found, assessment.ruleSet.id, links));
  return lines.filter(Boolean).join("\n\n");
}

function findingText(check: Check, links: Links): string {
  const { outcome } = check;
  const finding = outcome.outcome === "departure" ? outcome.finding : outcome;
  const margin = finding.outcome === "finding" ? marginText(finding) : undefined;
  return [verdictText(check, links), margin && plain(margin)].filter(Boolean).join("\n\n");
}

/** Who decided, and until when. */
function propertyLines(properties: readonly Property[]): string[] {
  return properties.map((property) => `${property.name}: ${plain(valueText(property))}`);
}

function nameOf({ target }: { readonly target?: Mention }): string {
  return target?.path.join(".") ?? "it";
}

function thingAt({ design }: Assessment, target: Mention): Thing | undefined {
  const name = target.path.join(".");
  const run = thingsOf(design).runs.get(name);
  if (run) return run;
  const resolved = design.names.resolve(target);
  return resolved.is === "item" ? resolved.item : design.parts.get(name);
}
