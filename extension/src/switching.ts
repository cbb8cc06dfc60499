import { commands, type Disposable, l10n, type QuickPickItem, window } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { Mode } from "../../language-server/src/circuit/modes";
import type { SwitchingResult } from "../../language-server/src/editor/lsp/design-requests";
import type { Answer } from "../../language-server/src/editor/switching/answer";
import type { Choice, DesignChoices } from "../../language-server/src/editor/switching/choices";
import { AnswerPages } from "./answer-pages";
import { addressOf, ask, designEditor } from "./requests";

function modes(): (QuickPickItem & { readonly mode: Partial<Mode> })[] {
  return [
    {
      label: l10n.t("In every mode"),
      description: l10n.t("by day and by night, with the grid and in an island"),
      mode: {},
    },
    { label: l10n.t("With the grid"), description: l10n.t("by day and by night"), mode: { supply: "grid" } },
    { label: l10n.t("In an island"), description: l10n.t("by day and by night"), mode: { supply: "island" } },
    { label: l10n.t("By day, with the grid"), mode: { light: "day", supply: "grid" } },
    { label: l10n.t("By night, with the grid"), mode: { light: "night", supply: "grid" } },
    { label: l10n.t("By day, in an island"), mode: { light: "day", supply: "island" } },
    { label: l10n.t("By night, in an island"), mode: { light: "night", supply: "island" } },
  ];
}

/** What stays live with some devices open, and how to isolate: asked in lists, answered on a page. */
export function registerSwitching(client: BaseLanguageClient): Disposable[] {
  const pages = new AnswerPages();
  return [
    pages,
    commands.registerCommand("sunwright.whatStaysLive", () => whatStaysLive(client, pages)),
    commands.registerCommand("sunwright.howToIsolate", () => howToIsolate(client, pages)),
  ];
}

async function whatStaysLive(client: BaseLanguageClient, pages: AnswerPages): Promise<void> {
  const asked = await askedDesign(client);
  if (!asked) return;
  const { design, at } = asked;
  const picked = await window.showQuickPick(
    design.devices.map((device) => ({ ...itemOf(device), picked: device.id === at })),
    {
      title: l10n.t("What Stays Live?"),
      placeHolder: l10n.t("Devices that are open; none is an answer too"),
      canPickMany: true,
      matchOnDescription: true,
    },
  );
  if (!picked) return;
  const mode = await window.showQuickPick(modes(), {
    title: l10n.t("What Stays Live?"),
    placeHolder: l10n.t("In which mode"),
  });
  if (!mode) return;
  const open = picked.map(({ label }) => label);
  await answer(client, pages, l10n.t("What stays live"), "sunwright/live", design, { open, ...mode.mode });
}

async function howToIsolate(client: BaseLanguageClient, pages: AnswerPages): Promise<void> {
  const asked = await askedDesign(client);
  if (!asked) return;
  const { design, at } = asked;
  // What the cursor stands on is first, so that one key is enough.
  const things = [...design.things].sort((a, b) => Number(b.id === at) - Number(a.id === at));
  const picked = await window.showQuickPick(things.map(itemOf), {
    title: l10n.t("How Do I Isolate?"),
    placeHolder: l10n.t("An item or a run that should be dead"),
    matchOnDescription: true,
  });
  if (!picked) return;
  const { label: thing } = picked;
  await answer(client, pages, l10n.t("How to isolate {0}", thing), "sunwright/isolate", design, { thing });
}

/** The design at the cursor, chosen from a list where the file belongs to several. */
async function askedDesign(
  client: BaseLanguageClient,
): Promise<{ readonly design: DesignChoices; readonly at?: string } | undefined> {
  const editor = designEditor();
  if (!editor) return undefined;
  const position = client.code2ProtocolConverter.asPosition(editor.selection.active);
  const uri = addressOf(client, editor.document);
  const result = await ask<SwitchingResult>(client, "sunwright/switching", uri, { position });
  const designs = result?.designs ?? [];
  if (designs.length === 0) {
    void window.showInformationMessage(l10n.t("No design here declares an item: there is nothing to switch."));
    return undefined;
  }
  if (designs.length === 1) return { design: designs[0]!, at: result?.at };
  const picked = await window.showQuickPick(
    designs.map((design) => ({ label: design.title ?? fileName(design.entry), description: design.entry, design })),
    { placeHolder: l10n.t("This file belongs to several designs: which one?") },
  );
  return picked && { design: picked.design, at: result?.at };
}

async function answer(
  client: BaseLanguageClient,
  pages: AnswerPages,
  name: string,
  method: string,
  { entry }: DesignChoices,
  params: object,
): Promise<void> {
  const given = await ask<Answer>(client, method, entry, params);
  if (!given) return;
  if ("refused" in given) void window.showErrorMessage(given.refused);
  else await pages.show(name, given.markdown);
}

function itemOf({ id, detail }: Choice): QuickPickItem {
  return { label: id, description: detail };
}

function fileName(uri: string): string {
  return uri.slice(uri.lastIndexOf("/") + 1);
}
