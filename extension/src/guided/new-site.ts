import { l10n, type QuickPickItem, QuickPickItemKind, Range, Selection, Uri, window, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { KnownPart } from "../../../language-server/src/editor/guided/known-parts";
import type { Chosen, SitePlan } from "../../../language-server/src/editor/guided/site-text";
import { Guide } from "./guide";
import { FilePlace, knownFolders, makeFile } from "./place";
import { askChoice, askText, lead, type Option, type Step } from "./steps";

/** A part, one that is not chosen yet, or nothing of the kind. */
type PartAnswer = KnownPart | "open" | "none";

interface StringAnswer {
  part: PartAnswer;
  count: string;
}

/** What is answered so far; an empty text is not known yet. */
class SiteAnswers {
  name = "";
  rules = "gb";
  readonly supply = { phases: "", earthing: "", "service-fuse": "" };
  stringCount = 1;
  readonly strings: StringAnswer[] = [];
  inverter: PartAnswer = "open";
  battery: PartAnswer = "none";
  batteryCount = "1";

  plan(): SitePlan {
    const supply = Object.fromEntries(Object.entries(this.supply).filter(([, value]) => value !== ""));
    const battery = chosenOf(this.battery);
    return {
      name: this.name,
      rules: this.rules,
      supply,
      strings: Array.from({ length: this.stringCount }, (_, index) => {
        const { part, count } = this.string(index);
        return { ...chosenOf(part), ...(count !== "" && { count }) };
      }),
      inverter: chosenOf(this.inverter),
      battery: battery?.part ? { ...battery, count: this.batteryCount } : battery,
    };
  }

  /** A string is like the one before it until somebody says otherwise. */
  string(index: number): StringAnswer {
    const before = this.strings[index - 1];
    this.strings[index] ??= before ? { ...before } : { part: "open", count: "" };
    return this.strings[index];
  }
}

/** Leads to the file of a new site; nothing is written before the last step. */
export async function newSite(client: BaseLanguageClient, folder?: Uri): Promise<void> {
  const guide = new Guide(client);
  const [folders, parts] = await Promise.all([knownFolders(), guide.parts(["module", "inverter", "battery"])]);
  const answers = new SiteAnswers();
  const place = new FilePlace(folder);
  // A file that is in no folder has no way to the sheets of others.
  const known = folders.length === 0 ? [] : parts;
  const done = await lead(l10n.t("New Site"), () => [
    ...aboutSite(guide, answers),
    ...aboutStrings(answers, ofKind(known, "module")),
    aboutPart(l10n.t("Which inverter"), ofKind(known, "inverter"), answers.inverter, (part) => {
      answers.inverter = part;
    }),
    aboutPart(l10n.t("Which battery"), ofKind(known, "battery"), answers.battery, (part) => {
      answers.battery = part;
    }),
    ...(typeof answers.battery === "object" ? [batteryCount(answers)] : []),
    ...place.steps(folders, fileNameOf(answers.name)),
  ]);
  if (!done) return;
  const address = place.uri ? client.code2ProtocolConverter.asUri(place.uri) : "untitled:site.sun";
  const { text, open } = await guide.siteText(answers.plan(), address);
  const document = await makeFile(place.uri, text);
  if (!document) return;
  const range = new Range(document.positionAt(open.start), document.positionAt(open.end));
  const editor = await window.showTextDocument(document, { preview: false });
  editor.selection = new Selection(range.start, range.end);
  editor.revealRange(range);
}

function aboutSite(guide: Guide, answers: SiteAnswers): Step[] {
  const { supply } = answers;
  return [
    askText({
      prompt: l10n.t("Name of the site, as it stands on the papers."),
      placeholder: l10n.t("such as Alder Cottage"),
      value: answers.name,
      problem: (answer) => (answer === "" ? l10n.t("A site needs a name.") : undefined),
      keep: (answer) => {
        answers.name = answer;
      },
    }),
    askChoice<string>({
      placeholder: l10n.t("Which rules it is checked against"),
      options: [
        { label: "gb", description: l10n.t("BS 7671 and its companions, for Great Britain"), value: "gb" },
        { label: "iec", description: l10n.t("IEC 60364 and IEC 62548, without national rules"), value: "iec" },
      ],
      marked: (value) => value === answers.rules,
      keep: (value) => {
        answers.rules = value;
      },
    }),
    askChoice<string>({
      placeholder: l10n.t("How the supply is earthed"),
      options: [
        notKnownYet(),
        {
          label: "TN-C-S",
          description: l10n.t("neutral and earth combined in the street, parted at the cut-out"),
          value: "TN-C-S",
        },
        { label: "TN-S", description: l10n.t("an earth of its own, often the sheath of the cable"), value: "TN-S" },
        { label: "TT", description: l10n.t("an electrode at the house, nothing from the supplier"), value: "TT" },
        { label: "IT", description: l10n.t("the source is not earthed, or through an impedance"), value: "IT" },
      ],
      marked: (value) => value === supply.earthing,
      keep: (value) => {
        supply.earthing = value;
      },
    }),
    askChoice<string>({
      placeholder: l10n.t("How many phases the supply has"),
      options: [
        notKnownYet(),
        { label: "1", description: l10n.t("one line and neutral"), value: "1" },
        { label: "3", description: l10n.t("three lines and neutral"), value: "3" },
      ],
      marked: (value) => value === supply.phases,
      keep: (value) => {
        supply.phases = value;
      },
    }),
    askText({
      topic: l10n.t("service fuse"),
      prompt: l10n.t("Rating of the supplier's fuse in the cut-out. Empty: not known yet."),
      placeholder: l10n.t("such as {0}", "80 A"),
      value: supply["service-fuse"],
      problem: (answer) =>
        answer === "" ? undefined : guide.answerProblem({ kind: "supply", property: "service-fuse", answer }),
      keep: (answer) => {
        supply["service-fuse"] = answer;
      },
    }),
  ];
}

function aboutStrings(answers: SiteAnswers, modules: readonly KnownPart[]): Step[] {
  const labels = [l10n.t("No string yet"), l10n.t("1 string")];
  const steps: Step[] = [
    askChoice<number>({
      placeholder: l10n.t("How many strings of modules"),
      options: [0, 1, 2, 3, 4, 5, 6].map((value) => ({ label: labels[value] ?? l10n.t("{0} strings", value), value })),
      marked: (value) => value === answers.stringCount,
      keep: (value) => {
        answers.stringCount = value;
      },
    }),
  ];
  // Without a sheet of any module there is nothing to choose from.
  if (modules.length === 0) return steps;
  for (let index = 0; index < answers.stringCount; index++) {
    const string = answers.string(index);
    const name = `S${index + 1}`;
    const pick = aboutPart(
      l10n.t("String {0}: which module", name),
      modules,
      string.part,
      (part) => {
        string.part = part;
      },
      false,
    );
    steps.push(pick);
    if (typeof string.part === "object") steps.push(moduleCount(name, string));
  }
  return steps;
}

function moduleCount(name: string, string: StringAnswer): Step {
  return askText({
    prompt: l10n.t("String {0}: how many modules in series. Empty: not known yet.", name),
    placeholder: l10n.t("such as {0}", "11"),
    value: string.count,
    problem: (answer) => (answer === "" ? undefined : countProblem(answer)),
    keep: (answer) => {
      string.count = answer;
    },
  });
}

function batteryCount(answers: SiteAnswers): Step {
  return askText({
    prompt: l10n.t("How many batteries of this sort."),
    value: answers.batteryCount,
    problem: countProblem,
    keep: (answer) => {
      answers.batteryCount = answer;
    },
  });
}

function aboutPart(
  placeholder: string,
  parts: readonly KnownPart[],
  answered: PartAnswer,
  keep: (part: PartAnswer) => void,
  mayBeNone = true,
): Step {
  const options: (Option<PartAnswer> | QuickPickItem)[] = [
    { label: l10n.t("Not chosen yet"), value: "open" },
    ...(mayBeNone ? [{ label: l10n.t("None"), value: "none" as const }] : []),
  ];
  if (parts.length > 0) options.push({ label: l10n.t("sheets in this folder"), kind: QuickPickItemKind.Separator });
  for (const part of parts)
    options.push({ label: part.name, description: fileOf(part.uri), detail: part.doc, value: part });
  return askChoice<PartAnswer>({ placeholder, options, marked: (value) => sameAnswer(value, answered), keep });
}

function countProblem(answer: string): string | undefined {
  return /^[1-9]\d{0,3}$/.test(answer) ? undefined : l10n.t("Write a whole number, such as 11.");
}

function notKnownYet(): Option<string> {
  return { label: l10n.t("Not known yet"), description: l10n.t("it is left out, and named as not checked"), value: "" };
}

function chosenOf(answer: PartAnswer): Chosen | undefined {
  if (answer === "none") return undefined;
  return answer === "open" ? {} : { part: answer };
}

function sameAnswer(a: PartAnswer, b: PartAnswer): boolean {
  if (typeof a !== "object" || typeof b !== "object") return a === b;
  return a.name === b.name && a.uri === b.uri;
}

function ofKind(parts: readonly KnownPart[], kind: string): KnownPart[] {
  return parts.filter((part) => part.kind === kind);
}

function fileOf(uri: string): string {
  return workspace.asRelativePath(Uri.parse(uri));
}

/** `Alder Cottage` → `alder-cottage.sun`. */
function fileNameOf(name: string): string {
  const words = name.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return `${words.join("-") || "site"}.sun`;
}
