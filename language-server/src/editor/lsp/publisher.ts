import { DocumentState, type LangiumDocument } from "langium";
import type { Connection, Diagnostic } from "vscode-languageserver";
import type { SunwrightServices, SunwrightSharedServices } from "../../language/module.js";
import { sameData } from "./same-data.js";

/** Sends a file's diagnostics when they have changed, and takes them back when the file is gone. */
export class Publisher {
  private readonly sent = new Map<string, readonly Diagnostic[]>();

  constructor(
    private readonly services: SunwrightSharedServices,
    private readonly connection: Connection,
    private readonly spelled: (uri: string) => string,
  ) {
    const builder = services.workspace.DocumentBuilder;
    builder.onUpdate((_changed, deleted) => {
      for (const uri of deleted) this.send(uri.toString(), []);
    });
    builder.onDocumentPhase(DocumentState.Validated, ({ uri, diagnostics }) => {
      if (diagnostics) this.send(uri.toString(), diagnostics);
    });
  }

  /** Says again what there is to say about every file: the user has changed what is shown. */
  async refresh(): Promise<void> {
    for (const document of this.services.workspace.LangiumDocuments.all.toArray()) {
      if (document.state >= DocumentState.Validated) await this.diagnoseAgain(document);
    }
  }

  private async diagnoseAgain(document: LangiumDocument): Promise<void> {
    const language = this.services.ServiceRegistry.getServices(document.uri) as SunwrightServices;
    const diagnostics = await language.validation.DocumentValidator.validateDocument(document);
    document.diagnostics = diagnostics;
    this.send(document.uri.toString(), diagnostics);
  }

  private send(uri: string, diagnostics: readonly Diagnostic[]): void {
    const before = this.sent.get(uri);
    const isOpen = this.services.workspace.TextDocuments.get(uri) !== undefined;
    // An open file is told of once even with nothing wrong: that is how its reader knows it was looked at.
    if (before ? sameData(before, diagnostics) : diagnostics.length === 0 && !isOpen) return;
    this.sent.set(uri, diagnostics);
    void this.connection.sendDiagnostics({ uri: this.spelled(uri), diagnostics: [...diagnostics] });
  }
}
