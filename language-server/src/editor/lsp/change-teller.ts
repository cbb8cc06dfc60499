import { DocumentState } from "langium";
import type { Connection } from "vscode-languageserver";
import type { SunwrightSharedServices } from "../../language/module.js";

/**
 * Tells an editor that wishes it which files' designs have been computed anew, after their figures have been sent:
 * `sunwright/designChanged`. Whoever shows a design asks again then, and at no other time.
 */
export class ChangeTeller {
  private isWished = false;

  constructor(
    services: SunwrightSharedServices,
    private readonly connection: Connection,
    private readonly spelled: (uri: string) => string,
  ) {
    services.workspace.DocumentBuilder.onBuildPhase(DocumentState.Validated, (documents) =>
      this.tell(documents.map(({ uri }) => uri.toString())),
    );
  }

  /** An editor says at the start that it wants to be told: `{ designChanged: true }` in its initialization options. */
  initialize(options: unknown): void {
    this.isWished = (options as { designChanged?: unknown } | undefined)?.designChanged === true;
  }

  /** Without files: all of them, because what is supposed or shown has changed. */
  tell(uris?: readonly string[]): void {
    if (!this.isWished) return;
    void this.connection.sendNotification("sunwright/designChanged", { uris: uris?.map(this.spelled) });
  }
}
