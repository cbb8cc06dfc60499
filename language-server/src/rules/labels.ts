import type { LabelWord } from "../design/schema/common.js";
import type { Source } from "../physics/figure.js";

/** What stands on a label, and who asks for it. */
export interface LabelText {
  readonly text: string;
  readonly source: Source;
}

/** A rule set's text for every label. */
export type LabelTexts = Readonly<Record<LabelWord, LabelText>>;

/** The same text with another source: most wordings are shared. */
export function askedBy(texts: LabelTexts, source: Source): LabelTexts {
  const entries = Object.entries(texts) as [LabelWord, LabelText][];
  return Object.fromEntries(entries.map(([word, { text }]) => [word, { text, source }])) as LabelTexts;
}
