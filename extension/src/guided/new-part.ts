import { l10n, Position, Selection, type TextDocument, Uri, WorkspaceEdit, window, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { KnownPart } from "../../../language-server/src/editor/guided/known-parts";
import type { Sheet, SheetKind } from "../../../language-server/src/editor/guided/sheet";
import { isDesign } from "../designs";
import { Guide } from "./guide";
import { FilePlace, knownFolders, makeFile } from "./place";
import { SectionAnswers } from "./sheet-steps";
import { Sides } from "./sides";
import { askChoice, askText, lead, type Option, type Step } from "./steps";

/** So many files are offered; in a folder with more, a new one can still be made. */
const filesOffered = 200;

/** A sheet that is being read out, with all that was said so far. */
class SheetAnswers {
  readonly own: SectionAnswers;
  readonly sides: Sides;

  constructor(readonly sheet: Sheet) {
    this.own = new SectionAnswers("", { kind: sheet.kind }, sheet.questions);
    this.sides = new Sides(sheet);
  }
}

/** What is answered so far of a new part. */
class PartAnswers {
  sheet: SheetAnswers | undefined;
  /** A file that is there, or a new one. */
  target: Uri | "new" | undefined;
  name = "";
  source = "";
  readonly place = new FilePlace();
  private readonly sheets = new Map<string, SheetAnswers>();

  /** What was said of another kind is kept, in case it was the right one after all. */
  choose(sheet: Sheet): void {
    this.sheet = this.sheets.get(sheet.kind) ?? new SheetAnswers(sheet);
    this.sheets.set(sheet.kind, this.sheet);
  }
}

/** Leads through a data sheet, line by line; nothing is written before the last step. */
export async function newPart(client: BaseLanguageClient): Promise<void> {
  const guide = new Guide(client);
  const kinds = await guide.sheetKinds();
  const [parts, files, folders] = await Promise.all([
    guide.parts(kinds.map(({ kind }) => kind)),
    workspace.findFiles("**/*.sun", "**/node_modules/**", filesOffered),
    knownFolders(),
  ]);
  const answers = new PartAnswers();
  const { place } = answers;
  const targets = targetsOf(files);
  const isNew = (): boolean => answers.target === "new" || targets.length === 0;
  const done = await lead(l10n.t("New Part From a Data Sheet"), () => [
    askKind(guide, kinds, answers),
    ...(targets.length === 0 ? [] : [askTarget(targets, answers)]),
    ...(isNew() ? place.steps(folders, "parts.sun") : []),
    askName(guide, parts, answers),
    ...(answers.sheet ? [...answers.sheet.own.steps(guide), ...answers.sheet.sides.steps(guide)] : []),
    askSource(answers),
  ]);
  if (!done || !answers.sheet) return;
  const { sheet, own, sides } = answers.sheet;
  const { name, source, target } = answers;
  const plan = { kind: sheet.kind, name, answers: own.stated(), blocks: sides.plan(), sheet: source };
  const text = await guide.partText(plan);
  const document = target instanceof Uri ? await append(target, text) : await makeFile(place.uri, text);
  if (document) await showPart(document, text);
}

function askKind(guide: Guide, kinds: readonly SheetKind[], answers: PartAnswers): Step {
  return askChoice<string>({
    placeholder: l10n.t("What sort of thing the sheet describes"),
    options: kinds.map(({ kind, title, help }) => ({
      label: title,
      description: kind === title ? undefined : kind,
      detail: help,
      value: kind,
    })),
    marked: (kind) => kind === answers.sheet?.sheet.kind,
    keep: async (kind) => {
      const sheet = await guide.sheet(kind);
      if (sheet) answers.choose(sheet);
    },
  });
}

function askTarget(targets: readonly Option<Uri>[], answers: PartAnswers): Step {
  return askChoice<Uri | "new">({
    placeholder: l10n.t("In which file the part is written"),
    options: [...targets, { label: l10n.t("A new file …"), value: "new" }],
    marked: (value) => String(value) === String(answers.target),
    keep: (value) => {
      answers.target = value;
    },
  });
}

function askName(guide: Guide, parts: readonly KnownPart[], answers: PartAnswers): Step {
  return askText({
    prompt: l10n.t("A name for the part, as designs will call it. It is one word."),
    placeholder: l10n.t("such as {0}", "Hollin430"),
    value: answers.name,
    problem: async (name) => {
      const isTaken = parts.some((part) => part.name === name && sameFile(part.uri, answers.target));
      if (isTaken) return l10n.t("There is a part {0} in that file already. Choose another name.", name);
      return guide.nameProblem(name);
    },
    keep: (name) => {
      answers.name = name;
    },
  });
}

function askSource(answers: PartAnswers): Step {
  return askText({
    prompt: l10n.t("Which sheet and revision the figures were taken from. Empty: not stated."),
    placeholder: l10n.t("such as {0}", "sheet 3, revision B"),
    value: answers.source,
    problem: () => undefined,
    keep: (source) => {
      answers.source = source;
    },
  });
}

/** Files to write into, the one in front first. */
function targetsOf(files: readonly Uri[]): Option<Uri>[] {
  const front = window.activeTextEditor?.document;
  const first = front && isDesign(front) ? String(front.uri) : undefined;
  return [...files]
    .sort((a, b) => Number(String(b) === first) - Number(String(a) === first) || a.path.localeCompare(b.path))
    .map((value) => ({
      label: workspace.asRelativePath(value),
      description: String(value) === first ? l10n.t("in front") : undefined,
      value,
    }));
}

/** Writes a text behind all else in a file. Whoever reads it saves it. */
async function append(uri: Uri, text: string): Promise<TextDocument | undefined> {
  const document = await workspace.openTextDocument(uri);
  const end = document.lineAt(document.lineCount - 1).range.end;
  const before = document.getText().trimEnd();
  const isLineOpen = end.character > 0;
  const edit = new WorkspaceEdit();
  edit.insert(uri, end, before === "" ? text : `${isLineOpen ? "\n\n" : "\n"}${text}`);
  if (await workspace.applyEdit(edit)) return document;
  void window.showErrorMessage(l10n.t("{0} could not be changed. Nothing was written.", workspace.asRelativePath(uri)));
  return undefined;
}

/** Shows the part where it was written, at the end of its file. */
async function showPart(document: TextDocument, text: string): Promise<void> {
  const editor = await window.showTextDocument(document, { preview: false });
  const lines = text.split("\n").length - 1;
  const start = new Position(Math.max(0, document.lineCount - 1 - lines), 0);
  editor.selection = new Selection(start, start);
  editor.revealRange(editor.selection);
}

function sameFile(uri: string, target: Uri | "new" | undefined): boolean {
  return target instanceof Uri && Uri.parse(uri).toString() === target.toString();
}
