import { l10n } from "vscode";
import type { Answers } from "../../../language-server/src/editor/guided/part-text";
import type { SheetQuestion } from "../../../language-server/src/editor/guided/sheet";
import type { Guide } from "./guide";
import { askChoice, askSeveral, askText, type Step } from "./steps";

/** What was answered of one list of questions: that of the thing itself, or of one of its sides. */
export class SectionAnswers {
  answers: Record<string, string> = {};
  /** Lines beyond the usual ones that the sheet has. */
  private extra = new Set<string>();

  /** `label` is how it is called in front of a question, `block` the kind of its braces. */
  constructor(
    readonly label: string,
    private readonly asked: { readonly kind: string; readonly block?: string },
    private readonly questions: readonly SheetQuestion[],
  ) {}

  /** What was answered and belongs to a line that is asked for. */
  stated(): Answers {
    const asked = new Set(this.asking().map(({ property }) => property));
    return Object.fromEntries(Object.entries(this.answers).filter(([name, value]) => value !== "" && asked.has(name)));
  }

  /** First what most checks need; then whatever else the sheet has is chosen from a list, and asked for. */
  steps(guide: Guide): Step[] {
    const needed = this.questions.filter(({ isEssential }) => isEssential);
    const others = this.questions.filter(({ isEssential }) => !isEssential);
    return [
      ...needed.map((question) => this.step(guide, question)),
      ...(others.length > 0 ? [this.askWhichOthers(others)] : []),
      ...others.filter(({ property }) => this.extra.has(property)).map((question) => this.step(guide, question)),
    ];
  }

  private asking(): SheetQuestion[] {
    return this.questions.filter(({ isEssential, property }) => isEssential || this.extra.has(property));
  }

  private askWhichOthers(others: readonly SheetQuestion[]): Step {
    return askSeveral<string>({
      placeholder: this.named(l10n.t("What else does the sheet state? None is an answer too.")),
      options: others.map(({ property, help, symbol }) => ({
        label: property,
        description: symbol,
        detail: help,
        value: property,
      })),
      chosen: (property) => this.extra.has(property),
      keep: (properties) => {
        this.extra = new Set(properties);
      },
    });
  }

  private step(guide: Guide, question: SheetQuestion): Step {
    const { property, typical, choices } = question;
    const keep = (answer: string): void => {
      this.answers[property] = answer;
    };
    const value = this.answers[property];
    const topic = this.label === "" ? property : `${this.label}.${property}`;
    if (choices)
      return askChoice<string>({
        topic,
        placeholder: this.named(promptOf(question)),
        options: [
          { label: l10n.t("Not stated"), description: l10n.t("the sheet does not say"), value: "" },
          ...choices.map((label) => ({ label, value: label })),
        ],
        marked: (choice) => choice === value,
        keep,
      });
    return askText({
      topic,
      prompt: this.named(l10n.t("{0} Written as {1}. Empty: not stated.", promptOf(question), question.form)),
      placeholder: typical === undefined ? undefined : l10n.t("such as {0}", typical),
      value,
      problem: (answer) => (answer === "" ? undefined : guide.answerProblem({ ...this.asked, property, answer })),
      keep,
    });
  }

  private named(text: string): string {
    return this.label === "" ? text : l10n.t("{0}: {1}", this.label, text);
  }
}

/** `open-circuit-voltage (Uoc). Open-circuit voltage at STC. On the sheet: Voc, open-circuit voltage.` */
function promptOf({ property, symbol, help, sheet }: SheetQuestion): string {
  const name = symbol === undefined ? property : `${property} (${symbol})`;
  return sheet === undefined
    ? l10n.t("{0}. {1}", name, help)
    : l10n.t("{0}. {1} On the sheet: {2}.", name, help, sheet);
}
