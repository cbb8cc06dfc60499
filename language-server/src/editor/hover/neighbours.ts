import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { Item, Thing } from "../../design/things.js";
import { listed } from "../../rules/phrases.js";
import { plain } from "../markdown.js";
import { type Feed, feedsOf } from "../structure/feeds.js";

/** More neighbours than these are a matter for the list of what feeds what. */
const most = 5;

/** `Fed from CU and from Q4 through W11. Feeds into …` One sentence each; nothing for what is wired to nothing. */
export function neighboursText(assessment: Assessment, thing: Thing): string | undefined {
  if (thing.is !== "item") return undefined;
  const { into, outOf } = feedsOf(assessment);
  const sentences = [
    sentence(l10n.t("Fed"), l10n.t("from"), into.get(thing.id) ?? [], ({ from }) => from),
    sentence(l10n.t("Feeds"), l10n.t("into"), outOf.get(thing.id) ?? [], ({ to }) => to),
  ].filter(Boolean);
  return sentences.length === 0 ? undefined : plain(sentences.join(" "));
}

/** Each neighbour has its own "from": a run belongs to the one that it is named behind. */
function sentence(does: string, way: string, feeds: readonly Feed[], neighbour: (feed: Feed) => Item): string {
  const named = new Set(
    feeds.map((feed) =>
      feed.run === undefined ? neighbour(feed).id : l10n.t("{0} through {1}", neighbour(feed).id, feed.run.id),
    ),
  );
  if (named.size === 0) return "";
  const shown = [...named].slice(0, most).map((each) => `${way} ${each}`);
  if (named.size > most) shown.push(l10n.t("{0} more", named.size - most));
  return `${does} ${listed(shown)}.`;
}
