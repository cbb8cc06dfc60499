import { l10n, type QuickPickItem, QuickPickItemKind, window } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { VerdictPlace } from "../../../language-server/src/editor/lsp/verdict-teller";
import type { DesignStatus } from "../../../language-server/src/editor/status/status";
import { ask } from "../requests";

interface Item extends QuickPickItem {
  readonly place?: VerdictPlace;
  readonly design?: DesignStatus;
}

/** Lists what there is to look at in a design and goes where the reader chooses; gives another design where that is chosen. */
export async function pickPlace(
  client: BaseLanguageClient,
  design: DesignStatus,
  designs: readonly DesignStatus[],
): Promise<DesignStatus | undefined> {
  const places = (await ask<VerdictPlace[]>(client, "sunwright/verdictPlaces", design.entry, {})) ?? [];
  const others = designs.filter(({ entry }) => entry !== design.entry);
  const items: Item[] = [
    ...section(l10n.t("findings"), placed(places, "finding")),
    ...section(l10n.t("departures"), placed(places, "departure")),
    ...section(l10n.t("not checked"), placed(places, "not-checked")),
    ...section(l10n.t("holds, closest to its limit first"), placed(places, "margin")),
    ...section(
      l10n.t("other designs of this file"),
      others.map((other) => ({ label: other.name, detail: other.sentence, design: other })),
    ),
  ];
  const picked = await window.showQuickPick(items, {
    title: design.text,
    placeHolder: l10n.t("Where to go"),
    matchOnDescription: true,
    matchOnDetail: true,
  });
  if (picked?.place) await go(client, picked.place);
  return picked?.design;
}

function placed(places: readonly VerdictPlace[], sort: VerdictPlace["sort"]): Item[] {
  return places
    .filter((place) => place.sort === sort)
    .map((place) => ({
      label: `${signOf(place)} ${place.title}`,
      description: place.note,
      detail: place.detail,
      place,
    }));
}

/** The signs that the list of problems has as well, where it has any. */
function signOf({ sort, severity }: VerdictPlace): string {
  if (sort === "finding") return severity === "error" ? "$(error)" : severity === "note" ? "$(info)" : "$(warning)";
  return { departure: "$(note)", "not-checked": "$(question)", margin: "$(dashboard)" }[sort];
}

function section(title: string, items: readonly Item[]): Item[] {
  return items.length === 0 ? [] : [{ label: title, kind: QuickPickItemKind.Separator }, ...items];
}

async function go(client: BaseLanguageClient, { location }: VerdictPlace): Promise<void> {
  const selection = client.protocol2CodeConverter.asRange(location.range);
  await window.showTextDocument(client.protocol2CodeConverter.asUri(location.uri), { selection });
}
