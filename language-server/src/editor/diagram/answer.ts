import type { Severities } from "../../assessment/severities.js";
import { suppositionText } from "../../assessment/what-if-text.js";
import type { Diagram } from "../../drawing/diagram.js";
import { diagramOf } from "../../drawing/diagram-of.js";
import { absolute } from "../../place.js";
import { verdictOf, verdictText } from "../lenses/verdict.js";
import type { Span } from "../navigate.js";
import type { WorkspaceView } from "../workspace-view.js";
import { type WrittenAt, writtenPlaces } from "./places.js";

/** A design that a file belongs to. */
export interface DesignName {
  /** The file that it begins in. */
  readonly entry: string;
  readonly title?: string;
}

/** What is told of a design beside whatever is drawn of it. */
export interface DesignHead {
  readonly entry: string;
  /** All designs that the file belongs to. */
  readonly designs: readonly DesignName[];
  readonly verdict: string;
  /** What is supposed in it. */
  readonly whatIf: readonly string[];
  /** Pieces of text that cannot be read: what they last said is drawn. */
  readonly unread: readonly Span[];
}

/** A design to be drawn, and where what is drawn is written. */
export interface DiagramAnswer extends DesignHead {
  readonly diagram: Diagram;
  readonly places: readonly WrittenAt[];
}

export function diagramAnswer(
  view: WorkspaceView,
  uri: string,
  wanted: string | undefined,
  severities: (entry: string) => Severities,
): DiagramAnswer {
  const head = designHead(view, uri, wanted, severities);
  const assessment = view.assessment(head.entry);
  return {
    ...head,
    diagram: diagramOf(assessment),
    places: writtenPlaces(assessment.design, (place) => view.isLive(place)),
  };
}

/** One of the designs a file belongs to: the one that was wished for if it is among them, the first otherwise. */
export function designHead(
  view: WorkspaceView,
  uri: string,
  wanted: string | undefined,
  severities: (entry: string) => Severities,
): DesignHead {
  const entries = view.entries(uri);
  const entry = entries.find((each) => each === wanted) ?? entries[0]!;
  const assessment = view.assessment(entry);
  const { whatIf } = assessment;
  return {
    entry,
    designs: entries.map((each) => ({ entry: each, title: view.assessment(each).design.site?.declaration.title })),
    verdict: verdictText(verdictOf(assessment, severities(entry))),
    whatIf: whatIf?.suppositions.map(suppositionText) ?? [],
    unread: view.sources
      .reach(entry)
      .flatMap((file) => view.sources.fragments(file))
      .flatMap(({ broken, chunk }) => (broken ? [absolute({ chunk, from: 0, to: 0 })] : [])),
  };
}
