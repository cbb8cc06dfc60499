import type { Assessment } from "../../assessment/assessment.js";
import type { Design } from "../../design/design.js";
import { label } from "../../design/facts.js";
import { kindRow, topLevelKinds } from "../../design/schema/index.js";
import { plain } from "../markdown.js";
import { blankOffers } from "./blank-offers.js";
import { nextNameOf } from "./free-names.js";
import { type Offer, whole } from "./offer.js";

/** So many open findings are offered to depart from. */
const mostDepartures = 8;

/**
 * Whole declarations with places to fill in, made for this design: the next free name, the parts that are in scope, the
 * findings that are open. A figure is never made up: what is to be filled in is a word that stays an error until then.
 */
export function wholeOffers(assessment: Assessment): Offer[] {
  return [
    runOffer(assessment),
    ...itemOffers(assessment),
    ...readingOffers(assessment),
    ...departureOffers(assessment),
    ...blankOffers(assessment.design),
  ];
}

function runOffer({ design }: Assessment): Offer {
  const name = nextNameOf(design, "run");
  const cables = partsOf(design.parts, "cable");
  return whole(
    "run",
    `run ${name} from … to …`,
    "a run with the next free name",
    `run ${name} from \${1:FROM} to \${2:TO}: \${3:LENGTH} m of ${choice(4, cables)}`,
  );
}

function itemOffers({ design }: Assessment): Offer[] {
  return topLevelKinds().flatMap((kind): Offer[] => {
    const row = kindRow(kind);
    const sheets = partsOf(design.parts, kind === "string" ? "module" : kind);
    if (!row || sheets.length === 0) return [];
    const name = nextNameOf(design, kind);
    const count = kind === "string" ? `\${1:COUNT} x ` : "";
    const body =
      kind === "string"
        ? ` {\n    tilt: \${3:TILT} deg\n    azimuth: \${4:AZIMUTH} deg\n    mounting: \${5:MOUNTING}\n}`
        : "";
    return [
      whole(
        kind,
        `${kind} ${name} is …`,
        row.title,
        `${kind} ${name} is ${count}${choice(count ? 2 : 1, sheets)}${body}`,
      ),
    ];
  });
}

/** For strings that nothing was measured on. */
function readingOffers({ design }: Assessment): Offer[] {
  const read = new Set(design.readings.map(({ item }) => item?.id));
  const unread = design.items.find(({ kind, id }) => kind === "string" && !read.has(id));
  if (!unread) return [];
  return [
    whole(
      "measured",
      `measured ${unread.id} on …`,
      "a reading on a string that has none yet",
      `measured ${unread.id} on \${1:DAY} {\n    open-circuit-voltage: \${2:READ} V\n    irradiance: \${3:READ} W/m2\n    cell-temperature: \${4:READ} degC\n}`,
    ),
  ];
}

function departureOffers({ told }: Assessment): Offer[] {
  const offers: Offer[] = [];
  for (const { rule, thing, outcome } of told) {
    if (outcome.outcome !== "finding" || offers.length >= mostDepartures) continue;
    const sentence = `departure ${rule.id} on ${label(thing)} because`;
    const offer = whole("departure", `${sentence} …`, "departs from an open finding", `${sentence} "\${1}"`);
    offers.push({ ...offer, documentation: plain(outcome.what) });
  }
  return offers;
}

function partsOf(parts: Design["parts"], kind: string): string[] {
  return [...parts.values()].filter((part) => part.kind === kind).map(({ name }) => name);
}

function choice(stop: number, names: readonly string[]): string {
  const [only, other] = names;
  if (only === undefined) return `\${${stop}:PART}`;
  return other === undefined ? `\${${stop}:${only}}` : `\${${stop}|${names.join(",")}|}`;
}
