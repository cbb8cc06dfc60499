import { absolute } from "../place.js";
import { type Span, usedFile } from "./navigate.js";
import type { WorkspaceView } from "./workspace-view.js";

export interface Link {
  readonly span: Span;
  readonly to: string;
}

/** The files that a file uses, at the paths that name them; a path that leads nowhere has no link. */
export function linksOf(view: WorkspaceView, uri: string): Link[] {
  const links: Link[] = [];
  for (const { declarations } of view.sources.fragments(uri)) {
    for (const declaration of declarations) {
      if (declaration.declares !== "use" || !view.isLive(declaration.pathPlace)) continue;
      const to = usedFile(view, uri, declaration.path);
      if (to === undefined) continue;
      const { start, end } = absolute(declaration.pathPlace);
      // Without the quotation marks.
      links.push({ span: { uri, start: start + 1, end: Math.max(start + 1, end - 1) }, to });
    }
  }
  return links;
}
