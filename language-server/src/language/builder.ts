import {
  type BuildOptions,
  Cancellation,
  DefaultDocumentBuilder,
  DefaultIndexManager,
  DocumentState,
  type LangiumDocument,
  type LangiumSharedCoreServices,
  URI,
} from "langium";
import type { SunwrightSharedOwnServices } from "./core-module.js";
import { readDesign } from "./files.js";
import type { Project } from "./project.js";

type Services = LangiumSharedCoreServices & SunwrightSharedOwnServices;

/** Builds documents as the framework does, and sees to it that what they use is loaded before they are judged. */
export class SunwrightDocumentBuilder extends DefaultDocumentBuilder {
  private readonly project: Project;

  constructor(services: Services) {
    super(services);
    this.project = services.sunwright.Project;
    this.onUpdate((_changed, deleted) => {
      for (const uri of deleted) this.project.remove(uri.toString());
    });
  }

  /**
   * Says that a document has a newer text than the one that was built, before the build begins: whoever asks about it
   * in between waits for that build.
   */
  announce(uri: URI): void {
    const document = this.langiumDocuments.getDocument(uri);
    if (document) document.state = DocumentState.Changed;
    // A file outside the folders of the workspace is first heard of when it is opened. Those within are found by
    // then: adding one while the folders are being read would be in the way of that.
    else void this.workspaceManager().ready.then(() => this.expect(uri));
    this.currentState = DocumentState.Changed;
  }

  private expect(uri: URI): void {
    if (this.langiumDocuments.hasDocument(uri)) return;
    const document = this.langiumDocumentFactory.fromModel({ $type: "INVALID" }, uri);
    document.state = DocumentState.Changed;
    this.langiumDocuments.addDocument(document);
  }

  protected override async buildDocuments(
    documents: LangiumDocument[],
    options: BuildOptions,
    token: Cancellation.CancellationToken,
  ): Promise<void> {
    const all = new Set(documents);
    const before = this.relatedTo(all);
    this.prepareBuild(documents, options);
    await this.runCancelable(documents, DocumentState.Parsed, token, (document) =>
      this.langiumDocumentFactory.update(document, token),
    );
    for (const document of await this.loadUsed()) all.add(document);
    // A `use` line that came or went joins files, or parts them: both what was and what is has a say.
    for (const uri of [...before, ...this.relatedTo(all)]) {
      const document = this.langiumDocuments.getDocument(URI.parse(uri));
      if (!document || all.has(document)) continue;
      this.resetToState(document, DocumentState.ComputedScopes);
      all.add(document);
    }
    await super.buildDocuments(this.sortDocuments([...all]), options, token);
  }

  private relatedTo(documents: Iterable<LangiumDocument>): Set<string> {
    const related = new Set<string>();
    for (const document of documents) {
      const uri = document.uri.toString();
      if (!related.has(uri)) for (const file of this.project.related(uri)) related.add(file);
    }
    return related;
  }

  /** Reads what is used and not known yet; such a file becomes a document like any other. */
  private async loadUsed(): Promise<LangiumDocument[]> {
    const loaded: LangiumDocument[] = [];
    for (let wanted = this.project.wantedFiles(); wanted.length > 0; wanted = this.project.wantedFiles()) {
      for (const name of wanted) {
        const uri = URI.parse(name);
        if (this.langiumDocuments.hasDocument(uri)) {
          await this.langiumDocumentFactory.update(
            this.langiumDocuments.getDocument(uri)!,
            Cancellation.CancellationToken.None,
          );
          continue;
        }
        const result = await readDesign(this.fileSystemProvider, name);
        if ("text" in result) loaded.push(this.langiumDocuments.createDocument(uri, result.text));
        else this.project.fail(name, result.failure);
      }
    }
    return loaded;
  }
}

/** Which documents an edit concerns is a matter of `use` lines, not of references in trees. */
export class SunwrightIndexManager extends DefaultIndexManager {
  private readonly project: Project;
  private concerned: { changed: Set<string>; files: Set<string> } | undefined;

  constructor(services: Services) {
    super(services);
    this.project = services.sunwright.Project;
  }

  override isAffected(document: LangiumDocument, changed: Set<string>): boolean {
    if (this.concerned?.changed !== changed) {
      const files = new Set<string>();
      for (const uri of changed) for (const file of this.project.related(uri)) files.add(file);
      this.concerned = { changed, files };
    }
    return this.concerned.files.has(document.uri.toString());
  }
}
