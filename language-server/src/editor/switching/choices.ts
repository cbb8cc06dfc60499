import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import { terminalsOf } from "../../circuit/circuit.js";
import { openingDevices } from "../../circuit/cut-graph.js";
import { textOf } from "../../design/facts.js";
import type { Item, Run } from "../../design/things.js";
import { declarationOf } from "../bindings.js";
import { locate } from "../locate.js";
import { thingsOf } from "../things-of.js";
import type { WorkspaceView } from "../workspace-view.js";

/** Something to choose from a list. */
export interface Choice {
  readonly id: string;
  /** "isolator, plant wall". */
  readonly detail: string;
}

/** A design that questions about switching may be asked of. */
export interface DesignChoices {
  /** The file that it begins in. */
  readonly entry: string;
  readonly title?: string;
  /** Devices that may be relied upon to open, then those that may not: whoever asks learns why. */
  readonly devices: readonly Choice[];
  /** All that can be made dead, or not: items with terminals, and runs. */
  readonly things: readonly Choice[];
}

export function designChoices(view: WorkspaceView, uri: string): DesignChoices[] {
  return view.assessments(uri).flatMap((assessment) => {
    const { design, circuit } = assessment;
    if (design.items.length === 0) return [];
    const things = itemsOf(design.items).filter((item) => terminalsOf(circuit, item).length > 0);
    return [
      {
        entry: design.entry,
        title: design.site?.declaration.title,
        devices: switchingDevices(assessment).map((device) => device.choice),
        things: [...things.map(choice), ...design.runs.map(runChoice)],
      },
    ];
  });
}

/** Devices that may be relied upon to open, then those that may not. */
export function switchingDevices({ design, circuit }: Assessment): { readonly item: Item; readonly choice: Choice }[] {
  const counted = openingDevices(circuit);
  const others = new Set(circuit.links.flatMap(({ by, opens }) => (opens && by.is === "item" ? [by] : [])));
  for (const device of counted) others.delete(device);
  const items = itemsOf(design.items);
  return [
    ...inOrder(items, counted).map((item) => ({ item, choice: choice(item) })),
    ...inOrder(items, others).map((item) => ({ item, choice: uncounted(item) })),
  ];
}

/** The item or run that the word at an offset means; undefined where it means none. */
export function thingAt(view: WorkspaceView, uri: string, offset: number): string | undefined {
  const located = locate(view.sources.fragments(uri), offset);
  if (!located) return undefined;
  const { word } = located;
  for (const assessment of view.assessments(uri)) {
    const declaration =
      word.is === "count" || word.is === "length" || word.is === "kind"
        ? word.declaration
        : declarationOf(assessment, located, located.segment);
    const [thing] = declaration ? thingsOf(assessment.design).of(declaration) : [];
    if (thing?.is === "item" || thing?.is === "run") return thing.id;
  }
  return undefined;
}

function itemsOf(items: readonly Item[]): Item[] {
  return items.flatMap((item) => [item, ...itemsOf(item.children)]);
}

function inOrder(items: readonly Item[], wanted: ReadonlySet<Item>): Item[] {
  return items.filter((item) => wanted.has(item));
}

function choice(item: Item): Choice {
  const location = textOf(item, "location");
  const title = item.row?.title ?? item.kind;
  return { id: item.id, detail: location === undefined ? title : `${title}, ${location}` };
}

function uncounted(item: Item): Choice {
  const { id, detail } = choice(item);
  return { id, detail: l10n.t("{0}; does not count as isolation", detail) };
}

function runChoice({ id, from, to }: Run): Choice {
  return { id, detail: l10n.t("run from {0} to {1}", from?.item.id ?? "?", to?.item.id ?? "?") };
}
