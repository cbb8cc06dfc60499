import { DocumentState } from "langium";
import type { ClientCapabilities, Connection } from "vscode-languageserver";
import type { SunwrightSharedServices } from "../../language/module.js";

/**
 * Figures beside a text may change when another file does: the site's temperature changes every string. Editors ask
 * again only where they know of a change, so they are told.
 */
export class Freshener {
  private hints = false;
  private lenses = false;
  private told = false;

  constructor(
    services: SunwrightSharedServices,
    private readonly connection: Connection,
  ) {
    services.workspace.DocumentBuilder.onBuildPhase(DocumentState.Validated, (documents) => {
      // The file that was edited is asked about anyway.
      if (documents.filter(({ uri }) => services.workspace.TextDocuments.get(uri.toString())).length > 1)
        this.refresh();
    });
  }

  initialize({ workspace }: ClientCapabilities): void {
    this.hints = workspace?.inlayHint?.refreshSupport === true;
    this.lenses = workspace?.codeLens?.refreshSupport === true;
  }

  /** Once for all that changes in one turn. */
  refresh(): void {
    if (this.told || !(this.hints || this.lenses)) return;
    this.told = true;
    setTimeout(() => {
      this.told = false;
      // An editor that is going, or that does not keep its word, is no failure of ours.
      if (this.hints) this.connection.languages.inlayHint.refresh().catch(ignored);
      if (this.lenses) this.connection.sendRequest("workspace/codeLens/refresh").catch(ignored);
    });
  }
}

function ignored(): void {}
