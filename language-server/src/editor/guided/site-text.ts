import * as l10n from "@vscode/l10n";
import { kindRow } from "../../design/schema/index.js";
import { pathBetween } from "../../language/files.js";
import { quoted } from "./answer.js";
import type { KnownPart } from "./known-parts.js";
import { inOneLook, type ReadText } from "./read-text.js";

/** Some of a part; without a part where none has been chosen yet. */
export interface Chosen {
  readonly part?: Pick<KnownPart, "name" | "uri">;
  readonly count?: string;
}

/** What somebody knows of a site before the first survey. What is not in it is not known yet. */
export interface SitePlan {
  readonly name: string;
  readonly rules?: string;
  /** Properties of the supply. */
  readonly supply: Readonly<Record<string, string>>;
  readonly strings: readonly Chosen[];
  readonly inverter?: Chosen;
  readonly battery?: Chosen;
}

export interface SiteText {
  readonly text: string;
  /** The first thing to be filled in, in offsets. */
  readonly open: { readonly start: number; readonly end: number };
}

/** A new site's file in the look of the language. What is not known is named in a comment, and so not checked. */
export function siteText(plan: SitePlan, uri: string, read: ReadText): SiteText {
  const { name, rules, supply, strings, inverter, battery } = plan;
  const used = [...strings.filter(({ count }) => count !== undefined), inverter, battery];
  const paths = new Set(used.flatMap((chosen) => (chosen?.part ? [pathBetween(uri, chosen.part.uri)] : [])));
  const declarations = [
    [...paths].map((path) => `use ${quoted(path)}\n`).join(""),
    block(`site ${quoted(name.trim())}`, "site", rules === undefined ? {} : { rules }),
    block("supply GRID", "supply", supply),
    ...strings.map((chosen, index) => stringText(`string S${index + 1}`, chosen)),
    inverter ? deviceText("inverter INV", inverter) : "",
    battery ? deviceText("battery BAT", battery) : "",
  ];
  const text = inOneLook(declarations.filter(Boolean).join("\n"), read);
  const start = text.indexOf(lead());
  const end = text.indexOf("\n", start);
  return { text, open: start < 0 ? { start: text.length, end: text.length } : { start, end } };
}

function stringText(head: string, { part, count }: Chosen): string {
  if (part && count !== undefined) return block(`${head} is ${count} x ${part.name}`, "string", {});
  const remark = part
    ? l10n.t("number of modules not known yet: {0}", `${head} is NUMBER x ${part.name}`)
    : l10n.t("no part chosen yet: {0}", `${head} is NUMBER x PART`);
  return block(head, "string", {}, [remark]);
}

/** A part's sheet says what there is to say; without one, that is the first thing to choose. */
function deviceText(head: string, { part, count }: Chosen): string {
  if (!part) return `${head} {\n// ${l10n.t("no part chosen yet: {0}", `${head} is PART`)}\n}\n`;
  return `${head} is ${count === undefined ? "" : `${count} x `}${part.name}\n`;
}

/** A declaration with what is known, and what most checks want to know besides in a comment. */
function block(
  head: string,
  kind: string,
  known: Readonly<Record<string, string>>,
  remarks: readonly string[] = [],
): string {
  const missing = (kindRow(kind)?.properties ?? []).filter((row) => row.essential && known[row.name] === undefined);
  const lines = [
    ...Object.entries(known).map(([property, value]) => `${property}: ${value}`),
    ...remarks.map((remark) => `// ${remark}`),
    ...(missing.length === 0 ? [] : [`${lead()} ${missing.map((row) => row.name).join(", ")}`]),
  ];
  return `${head} {\n${lines.join("\n")}\n}\n`;
}

function lead(): string {
  return `// ${l10n.t("still to be written:")}`;
}
