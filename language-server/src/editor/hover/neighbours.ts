import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { Item, Thing } from "../../design/things.js";
import { plain } from "../markdown.js";
import { type Feed, feedsOf } from "../structure/feeds.js";

/** More neighbours than these are a matter for the list of what feeds what. */
const most = 5;

/** `Fed from S1 through W1. Feeds INV.pv1 through W2.` One sentence each; nothing for what is wired to nothing. */
export function neighboursText(assessment: Assessment, thing: Thing): string | undefined {
  if (thing.is !== "item") return undefined;
  const { into, outOf } = feedsOf(assessment);
  const sentences = [
    sentence(l10n.t("Fed from"), into.get(thing.id) ?? [], ({ from }) => from),
    sentence(l10n.t("Feeds"), outOf.get(thing.id) ?? [], ({ to }) => to),
  ].filter(Boolean);
  return sentences.length === 0 ? undefined : plain(sentences.join(" "));
}

function sentence(does: string, feeds: readonly Feed[], neighbour: (feed: Feed) => Item): string {
  const named = new Set(
    feeds.map((feed) =>
      feed.run === undefined ? neighbour(feed).id : l10n.t("{0} through {1}", neighbour(feed).id, feed.run.id),
    ),
  );
  if (named.size === 0) return "";
  const shown = [...named].slice(0, most);
  const more = named.size > most ? ` ${l10n.t("and {0} more", named.size - most)}` : "";
  return `${does} ${shown.join(", ")}${more}.`;
}
