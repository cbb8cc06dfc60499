import { l10n } from "vscode";
import type { Diagram, TitleBlock } from "../../../language-server/src/drawing/diagram";
import type { DiagramResult, HeadResult } from "../../../language-server/src/editor/lsp/diagram-requests";
import { fileName } from "../files";
import type { Join, ShownDesign, ShownHead, ShownLive } from "./messages";

/** What the page shows of a design beside its picture. */
export function shownDesign(uri: string, result: DiagramResult, live: ShownLive | undefined): ShownDesign {
  const { diagram } = result;
  return {
    ...shownHead(uri, result, diagram.title),
    marks: diagram.marks,
    cautions: diagram.title.cautions,
    joins: joinsOf(diagram),
    isEmpty: diagram.nodes.length === 0,
    ...(live && { live }),
  };
}

export function shownHead(
  uri: string,
  { entry, designs, verdict, whatIf, unread }: HeadResult,
  { site, ruleSet, editions }: TitleBlock,
): ShownHead {
  return {
    uri,
    entry,
    designs: designs.map((each) => ({ entry: each.entry, name: each.title ?? fileName(each.entry) })),
    site: site === "" ? fileName(entry) : site,
    ruleSet: [ruleSet, ...editions].filter(Boolean).join(" · "),
    verdict,
    whatIf,
    unread: unread.map(({ uri: file, range }) => l10n.t("{0}, line {1}", fileName(file), range.start.line + 1)),
  };
}

function joinsOf({ wires }: Diagram): Join[] {
  return wires.map(({ id, from, to }) => ({ wire: id, from: from.node, to: to.node }));
}
