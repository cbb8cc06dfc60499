import { type KindRow, kindRows } from "../design/schema/index.js";

export interface Snippet {
  readonly prefix: string;
  readonly description: string;
  /** Lines with tab stops in the form that VS Code's snippets use. */
  readonly body: readonly string[];
}

/** One snippet a declaration: sentences by hand, kinds with their essential properties from the schema. */
export function snippets(): Record<string, Snippet> {
  const all: Record<string, Snippet> = { ...sentences };
  for (const row of kindRows) {
    if (row.kind in all || row.within) continue;
    if (row.declaredAs === "part" || row.declaredAs === "both") all[`part ${row.kind}`] = partSnippet(row);
    if (row.declaredAs === "item" || row.declaredAs === "both") all[row.kind] = itemSnippet(row);
    if (row.declaredAs === "block") all[row.kind] = blockSnippet(row);
  }
  return all;
}

const sentences: Record<string, Snippet> = {
  use: { prefix: "use", description: "Use the parts of another file", body: ['use "${1:parts/roof.sun}"'] },
  run: {
    prefix: "run",
    description: "A cable from one terminal to another",
    body: ["run ${1:W1} from ${2:S1} to ${3:Q1}: ${4:18 m} of ${5:Solar4}"],
  },
  string: {
    prefix: "string",
    description: "Modules in series",
    body: [
      "string ${1:S1} is ${2:10} x ${3:Module} {",
      "    tilt: ${4:35 deg}",
      "    azimuth: ${5:180 deg}",
      "    mounting: ${6|on-roof,in-roof,flat-roof,facade,ground|}",
      "}",
    ],
  },
  site: {
    prefix: "site",
    description: "The installation as a whole",
    body: [
      'site "${1:Name}" {',
      "    rules: ${2|gb,iec|}",
      "    lowest-temperature: ${3:-10 degC}",
      "    highest-temperature: ${4:35 degC}",
      "    ground-flash-density: ${5:0.5 /km2/yr}",
      "}",
    ],
  },
  measured: {
    prefix: "measured",
    description: "A reading taken on site",
    body: [
      "measured ${1:S1} on ${2:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE} {",
      "    open-circuit-voltage: ${3:402 V}",
      "    irradiance: ${4:640 W/m2}",
      "    cell-temperature: ${5:28 degC}",
      "}",
    ],
  },
  departure: {
    prefix: "departure",
    description: "Depart from a rule, in writing",
    body: ['departure ${1:rule} on ${2:item} because "${3:reason}"'],
  },
  expect: {
    prefix: "expect",
    description: "A finding that is meant, in a training design",
    body: ["expect ${1:rule} on ${2:item}"],
  },
};

function itemSnippet(row: KindRow): Snippet {
  return {
    prefix: row.kind,
    description: row.title,
    body: [`${row.kind} \${1:${row.kind.slice(0, 1).toUpperCase()}1} is \${2:Part}`],
  };
}

function partSnippet(row: KindRow): Snippet {
  return {
    prefix: `part-${row.kind}`,
    description: `Part sheet: ${row.title}`,
    body: [`part \${1:Name} is ${row.kind} {`, ...propertyLines(row, 2), "}"],
  };
}

function blockSnippet(row: KindRow): Snippet {
  return { prefix: row.kind, description: row.title, body: [`${row.kind} {`, ...propertyLines(row, 1), "}"] };
}

function propertyLines(row: KindRow, firstStop: number): string[] {
  const essential = row.properties.filter((property) => property.essential);
  const shown = essential.length > 0 ? essential : row.properties.slice(0, 4);
  return shown.map((property, index) => {
    const { shape, name, typical } = property;
    const stop = firstStop + index;
    if (shape.is === "words") return `    ${name}: \${${stop}|${shape.words.join(",")}|}`;
    if (shape.is === "flag") return `    ${name}: \${${stop}|yes,no|}`;
    return `    ${name}: \${${stop}:${typical ?? "?"}}`;
  });
}
