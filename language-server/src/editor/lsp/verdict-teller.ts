import { DocumentState } from "langium";
import type { Connection, Location } from "vscode-languageserver";
import { type StatusPlace, statusPlaces } from "../status/places.js";
import { type DesignStatus, failedStatus, statusOf } from "../status/status.js";
import type { Editor } from "./editor.js";
import { faultText } from "./fault-text.js";
import { type About, answerTo } from "./questions.js";
import { sameData } from "./same-data.js";

/*
 * `sunwright/verdict`: how the designs of an open file stand, sent when that has changed: `{ uri, designs }`.
 * `sunwright/verdictPlaces`: what there is to look at in the design that begins in a document.
 */

export interface VerdictPlace extends Omit<StatusPlace, "span"> {
  readonly location: Location;
}

/** Tells how the designs of the open files stand, after their problems have been sent. */
export class VerdictTeller {
  private readonly sent = new Map<string, readonly DesignStatus[]>();
  private isDue = false;

  constructor(
    private readonly connection: Connection,
    private readonly editor: Editor,
  ) {
    const { DocumentBuilder, TextDocuments } = editor.services.workspace;
    DocumentBuilder.onBuildPhase(DocumentState.Validated, () => this.tell());
    // A file that was known before it is opened is not built anew.
    TextDocuments.onDidOpen(() => this.tell());
    TextDocuments.onDidClose(({ document }) => this.sent.delete(document.uri));
    answerTo<About>(connection, editor, "sunwright/verdictPlaces", (uri) => this.places(uri));
  }

  /** Once for all that changes in one turn: what the reader waits for goes first. */
  tell(): void {
    if (this.isDue) return;
    this.isDue = true;
    setTimeout(() => {
      this.isDue = false;
      for (const uri of this.editor.services.workspace.TextDocuments.keys()) this.send(uri);
    });
  }

  private send(uri: string): void {
    const { view, positions } = this.editor;
    if (view.sources.text(uri) === undefined) return;
    const designs = this.statusOf(uri);
    const before = this.sent.get(uri);
    if (before && sameData(before, designs)) return;
    this.sent.set(uri, designs);
    void this.connection.sendNotification("sunwright/verdict", {
      uri: positions.spelled(uri),
      designs: designs.map((each) => ({ ...each, entry: positions.spelled(each.entry) })),
    });
  }

  private statusOf(uri: string): readonly DesignStatus[] {
    const { view, severities, connection } = this.editor;
    try {
      return statusOf(view, uri, severities);
    } catch (error) {
      connection?.console.error(`${uri}: ${faultText(error)}`);
      return [failedStatus(uri)];
    }
  }

  private places(entry: string): VerdictPlace[] {
    const { view, settings, severities, positions } = this.editor;
    return statusPlaces(view, entry, { ...settings, severities }).map(({ span, ...place }) => ({
      ...place,
      location: positions.location(span),
    }));
  }
}
