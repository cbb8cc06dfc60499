import { withArticle } from "./article.js";
import type { Mention, Problem } from "./model.js";
import type { Names } from "./names.js";
import { nearest } from "./suggest.js";
import type { End, Item } from "./things.js";

/** The terminal a run's end names. `side` is what an unmarked end of a two-terminal device means. */
export function endOfRun(names: Names, mention: Mention, side: "in" | "out", problems: Problem[]): End | undefined {
  const resolved = names.resolve(mention);
  switch (resolved.is) {
    case "ambiguous":
      problems.push(ambiguousProblem(mention, resolved.items));
      return undefined;
    // The part that is not there is the one thing to be mended.
    case "unknown":
      return undefined;
    case "nothing":
      problems.push(mentionProblem(mention, resolved.at, resolved.known, resolved.at === 0 ? "item" : "terminal"));
      return undefined;
    case "item": {
      const { item } = resolved;
      const terminals = item.row?.terminals ?? [];
      if (terminals.length === 0) {
        const inner = item.children.filter((child) => (child.row?.terminals.length ?? 0) > 0).map((child) => child.id);
        problems.push({
          id: "no-terminal",
          severity: "error",
          message:
            inner.length > 0
              ? `${item.id} has no terminal of its own: say which of its ports, ${inner.join(", ")}.`
              : `${item.id} is ${withArticle(item.kind)} and has no terminal: a run cannot end at it.`,
          place: mention.place,
          suggestions: inner.map((id) => ({ title: `Wire ${id}`, text: id })),
        });
        return undefined;
      }
      const terminal = resolved.terminal || unmarked(item, terminals, side);
      return { item, terminal, mention };
    }
  }
}

/** `CU.K9` is the load terminal of way 9: its other side is the bar, where no run lands. */
function unmarked(item: Item, terminals: readonly string[], side: "in" | "out"): string {
  const onBar = item.parent?.kind === "board" || item.parent?.kind === "rcd";
  const wanted = onBar ? "out" : side;
  return terminals.includes(wanted) ? wanted : (terminals[0] ?? "");
}

export function ambiguousProblem(mention: Mention, items: readonly Item[]): Problem {
  return {
    id: "ambiguous-name",
    severity: "error",
    message: `${mention.path.join(".")} may be ${items.map((item) => item.id).join(" or ")}. Write the whole path.`,
    place: mention.place,
    suggestions: items.map((item) => ({ title: `Write ${item.id}`, text: item.id })),
    related: items.map((item) => ({ place: item.declaration.namePlace, message: item.id })),
  };
}

/** "There is no Q7. Did you mean Q1?", at the one segment that is not known. */
export function mentionProblem(mention: Mention, at: number, known: Iterable<string>, sort: string): Problem {
  const word = mention.path[at] ?? "";
  const choices = [...known];
  const near = nearest(word, choices);
  const within = at > 0 ? ` in ${mention.path.slice(0, at).join(".")}` : "";
  const offer = near
    ? ` Did you mean ${near}?`
    : at > 0 && choices.length > 0
      ? ` It has ${choices.slice(0, 8).join(", ")}.`
      : ` Declare it, or add the file that does with "use".`;
  return {
    id: "unknown-name",
    severity: "error",
    message: `There is no ${sort} ${word}${within}.${offer}`,
    place: mention.places[at] ?? mention.place,
    missing: mention.path.slice(0, at + 1).join("."),
    suggestions: near ? [{ title: `Change to ${near}`, text: near }] : [],
  };
}
