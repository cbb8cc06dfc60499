import { propertyRow } from "../../design/schema/index.js";
import { asWritten, quoted } from "./answer.js";
import { inOneLook, type ReadText } from "./read-text.js";
import { type Sheet, type SheetQuestion, sheetOf, sheetProperty, sheetRow } from "./sheet.js";

/** Answers by property; what is empty or missing is not stated. */
export type Answers = Readonly<Record<string, string>>;

/** What was answered about one side of the thing. */
export interface BlockAnswers {
  readonly kind: string;
  readonly name?: string;
  readonly answers: Answers;
}

export interface PartPlan {
  readonly kind: string;
  readonly name: string;
  readonly answers: Answers;
  readonly blocks: readonly BlockAnswers[];
  /** Sheet and revision that the figures were taken from. */
  readonly sheet: string;
}

/** A part as its sheet was read out, in the look of the language; what nobody stated is not in it. */
export function partText(plan: PartPlan, read: ReadText): string {
  const sheet = sheetOf(plan.kind);
  if (!sheet) throw new Error(`${plan.kind} has no sheet`);
  const lines = [
    ...linesOf(plan.kind, undefined, sheet.questions, plan.answers),
    ...(plan.sheet.trim() === "" ? [] : [`${sheetProperty}: ${quoted(plan.sheet.trim())}`]),
    ...plan.blocks.flatMap((block) => blockLines(sheet, block)),
  ];
  return inOneLook(`part ${plan.name} is ${plan.kind} {\n${lines.join("\n")}\n}\n`, read);
}

function blockLines(sheet: Sheet, { kind, name, answers }: BlockAnswers): string[] {
  const block = sheet.blocks.find((each) => each.kind === kind);
  if (!block) return [];
  const head = block.isNamed ? `${kind} ${name}` : kind;
  return [`${head} {`, ...linesOf(sheet.kind, kind, block.questions, answers), "}"];
}

function linesOf(
  kind: string,
  block: string | undefined,
  questions: readonly SheetQuestion[],
  answers: Answers,
): string[] {
  const owner = sheetRow(kind, block);
  return questions.flatMap(({ property }) => {
    const answer = answers[property]?.trim() ?? "";
    const row = owner && propertyRow(owner, property);
    return answer === "" || !row ? [] : [`${property}: ${asWritten(row, answer)}`];
  });
}
