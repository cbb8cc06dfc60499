import { config } from "@vscode/l10n";

/**
 * Takes the words of the interface in the reader's language, as the client has them; English where it has none. What
 * rules say belongs to the rule set and stays in its language.
 */
export function takeWords(options: unknown): void {
  const { words } = (options ?? {}) as { words?: unknown };
  if (typeof words === "object" && words !== null) config({ contents: words as Record<string, string> });
}
