import { l10n } from "vscode";
import type { PartPlan } from "../../../language-server/src/editor/guided/part-text";
import type { Sheet, SheetBlock } from "../../../language-server/src/editor/guided/sheet";
import type { Guide } from "./guide";
import { SectionAnswers } from "./sheet-steps";
import { askChoice, askSeveral, type Step } from "./steps";

/** Names of several sides of a kind, as one would number them on the sheet: `pv1`, `pv2`. */
const names: Readonly<Record<string, string>> = { tracker: "pv" };
const most = 6;

/** The sides of a thing with their own lines on its sheet: an inverter's trackers, and the ports that it has. */
export class Sides {
  private readonly counts = new Map<SheetBlock, number>();
  private readonly sections = new Map<string, SectionAnswers>();
  /** Whether one is like the first of its kind. */
  private readonly alike = new Map<string, boolean>();
  private ports = new Set<string>();

  constructor(private readonly sheet: Sheet) {}

  steps(guide: Guide): Step[] {
    const named = this.sheet.blocks.filter(({ isNamed }) => isNamed);
    const ports = this.sheet.blocks.filter(({ isNamed }) => !isNamed);
    return [
      ...named.flatMap((block) => [this.askHowMany(block), ...this.severalSteps(guide, block)]),
      ...(ports.length > 0 ? [this.askPorts(ports)] : []),
      ...ports.filter(({ kind }) => this.ports.has(kind)).flatMap((block) => this.section(block).steps(guide)),
    ];
  }

  plan(): PartPlan["blocks"] {
    return this.sheet.blocks.flatMap((block) => {
      if (!block.isNamed) {
        return this.ports.has(block.kind) ? [{ kind: block.kind, answers: this.section(block).stated() }] : [];
      }
      const first = this.section(block, nameOf(block, 0));
      return this.namesOf(block).map((name) => ({
        kind: block.kind,
        name,
        answers: (this.alike.get(name) ? first : this.section(block, name)).stated(),
      }));
    });
  }

  private severalSteps(guide: Guide, block: SheetBlock): Step[] {
    return this.namesOf(block).flatMap((name, index) => {
      const section = this.section(block, name);
      if (index === 0) return section.steps(guide);
      return [this.askAlike(block, name), ...(this.alike.get(name) ? [] : section.steps(guide))];
    });
  }

  private askHowMany(block: SheetBlock): Step {
    const labels = [l10n.t("Not stated")];
    return askChoice<number>({
      placeholder: l10n.t("How many of this: {0}. {1}", block.title, block.help),
      options: Array.from({ length: most + 1 }, (_, value) => ({ label: labels[value] ?? String(value), value })),
      marked: (value) => value === (this.counts.get(block) ?? 1),
      keep: (value) => {
        this.counts.set(block, value);
      },
    });
  }

  private askAlike(block: SheetBlock, name: string): Step {
    const first = nameOf(block, 0);
    return askChoice<boolean>({
      placeholder: l10n.t("{0}: does the sheet say the same of it as of {1}?", name, first),
      options: [
        { label: l10n.t("The same"), value: true },
        { label: l10n.t("Something else"), value: false },
      ],
      marked: (value) => value === this.alike.get(name),
      keep: (value) => {
        this.alike.set(name, value);
      },
    });
  }

  private askPorts(ports: readonly SheetBlock[]): Step {
    return askSeveral<string>({
      placeholder: l10n.t("Which of these it has"),
      options: ports.map(({ kind, title, help }) => ({ label: kind, description: title, detail: help, value: kind })),
      chosen: (kind) => this.ports.has(kind),
      keep: (kinds) => {
        this.ports = new Set(kinds);
      },
    });
  }

  private namesOf(block: SheetBlock): string[] {
    return Array.from({ length: this.counts.get(block) ?? 0 }, (_, index) => nameOf(block, index));
  }

  private section(block: SheetBlock, name?: string): SectionAnswers {
    const key = name ?? block.kind;
    let section = this.sections.get(key);
    if (!section) {
      section = new SectionAnswers(key, { kind: this.sheet.kind, block: block.kind }, block.questions);
      this.sections.set(key, section);
    }
    return section;
  }
}

function nameOf({ kind }: SheetBlock, index: number): string {
  return `${names[kind] ?? kind}${index + 1}`;
}
