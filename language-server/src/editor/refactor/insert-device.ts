import * as l10n from "@vscode/l10n";
import { withArticle } from "../../design/article.js";
import type { Change } from "../edits/change.js";
import { thingsOf } from "../things-of.js";
import { type Carrier, carrierOf, sourceOf, tapAt } from "./carrier.js";
import type { Make } from "./device-line.js";
import { fittingPart } from "./fitting-parts.js";
import { putIntoRuns, tapOff } from "./put-device.js";
import type { Asked, Refactoring } from "./refactoring.js";

/** An isolator or a meter in a run, or a surge protective device beside it. */
export function insertDevice({ view, declaration, uri }: Asked): Refactoring[] {
  if (declaration.declares !== "run") return [];
  for (const assessment of view.assessments(uri)) {
    const run = thingsOf(assessment.design).of(declaration)[0];
    const carrier = run?.is === "run" && run.from && run.to ? carrierOf(assessment, run) : undefined;
    if (!carrier) continue;
    return offers(view, { ...carrier, run: { ...carrier.run, declaration } }, carrier);
  }
  return [];
}

/** `known` is the run as the wiring has it; `written` as it stands in the text, whatever is supposed of it. */
function offers(view: Asked["view"], written: Carrier, known: Carrier): Refactoring[] {
  const { run, carries } = written;
  const supply = carries === "ac" ? "ac" : "dc";
  const make = (kind: "isolator" | "meter" | "spd"): Make => {
    const part = fittingPart(known, kind);
    if (part !== undefined) return { kind, part };
    return kind === "meter" ? { kind } : { kind, supply };
  };
  const cut = (kind: "isolator" | "meter"): Refactoring[] => {
    const own = make(kind);
    const changes = putIntoRuns(view, [{ run, source: sourceOf(known) }], own);
    return refactoring(l10n.t("Insert {0} into {1}", called(own), run.id), changes);
  };
  const tap = (): Refactoring[] => {
    const own = make("spd");
    const terminal = tapAt(known);
    if (terminal === undefined) return [];
    return refactoring(l10n.t("Tap {0} off at {1}", called(own), terminal), tapOff(view, run, terminal, own));
  };
  if (carries === "battery") return cut("isolator");
  return carries === "ac" ? [...cut("isolator"), ...cut("meter"), ...tap()] : [...cut("isolator"), ...tap()];
}

function refactoring(title: string, changes: readonly Change[] | undefined): Refactoring[] {
  return changes && changes.length > 0 ? [{ title, kind: "refactor.rewrite", changes }] : [];
}

function called({ kind, part }: Make): string {
  return part === undefined
    ? l10n.t("{0}, its figures to be filled in,", withArticle(kind))
    : l10n.t("{0}, {1},", withArticle(kind), part);
}
