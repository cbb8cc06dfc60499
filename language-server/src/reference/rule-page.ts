import { sourceText } from "../physics/working.js";
import { examplePreamble } from "../rules/example-parts.js";
import type { Rule, Section } from "../rules/rule.js";

const severityWords = { error: "error", warning: "warning", note: "note" } as const;

/** The page that a diagnostic's code links to: generated from the rule itself, so it cannot fall behind. Markdown. */
export function rulePage(rule: Rule): string {
  return `# ${rule.id}

${rule.title}

*${rule.section}; ${severityWords[rule.severity]} unless the finding says otherwise.*

## What it does

${rule.what}

## Why it matters

${rule.why}

## A design that breaks it

\`\`\`sun
${rule.examples.breaks.trim()}
\`\`\`

## The same, mended

\`\`\`sun
${rule.examples.holds.trim()}
\`\`\`

The parts that these lines name are in [the parts that examples share](../example-parts.md).

## Where it comes from

${Object.entries(rule.sources)
  .map(([set, sources]) => `- Rule set \`${set}\`: ${sources.map(sourceText).join("; ")}`)
  .join("\n")}

## If you decide otherwise

Write it down beside the item, and the finding becomes a note that stays in every output:

\`\`\`sun
departure ${rule.id} on ITEM because "the reason a reader should know"
\`\`\`

A passed check is no certificate: it is a design aid that looked at what the text says. [All rules](../rules.md)
`;
}

/** The table of all rules. Markdown. */
export function ruleTable(rules: readonly Rule[]): string {
  const sections = [...new Set(rules.map((rule) => rule.section))];
  return `# Rules

Each rule is held against each thing it concerns, with one of five outcomes: it passes (and says how much of the limit
is used), it is a finding, a finding departed from in writing, not applicable, or **not checked**, naming the property
that is missing. What is not known never passes.

${sections.map((section) => sectionTable(section, rules)).join("\n\n")}
`;
}

function sectionTable(section: Section, rules: readonly Rule[]): string {
  const rows = rules
    .filter((rule) => rule.section === section)
    .map((rule) => `| [${rule.id}](rules/${rule.id}.md) | ${rule.severity} | ${rule.title} |`);
  return `## ${section}\n\n| rule | severity | what holds when it is kept |\n|---|---|---|\n${rows.join("\n")}`;
}

/** The parts that the examples of the rule pages are written with. Markdown. */
export function examplePartsPage(): string {
  return `# The parts that examples share

Invented, like every name and figure in the examples.

\`\`\`sun
${examplePreamble.trim()}
\`\`\`
`;
}
