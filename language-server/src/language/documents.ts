import type { Source } from "@sunwright/grammar/ast";
import {
  type AstNode,
  type Cancellation,
  DefaultLangiumDocumentFactory,
  DefaultWorkspaceManager,
  DocumentState,
  type FileSystemNode,
  type LangiumDocument,
  type LangiumSharedCoreServices,
  type ParseResult,
  TextDocument,
  type URI,
  UriUtils,
} from "langium";
import type { SunwrightSharedOwnServices } from "./core-module.js";
import { readDesign } from "./files.js";
import type { Project } from "./project.js";

type Writable<T> = { -readonly [P in keyof T]: T[P] };

/**
 * Gives every text to the project, which reads it in chunks. The tree that the framework keeps for a document is an
 * empty root: names, types and checks live in the design, so the framework's walks over the tree find nothing to do.
 */
export class SunwrightDocumentFactory extends DefaultLangiumDocumentFactory {
  private readonly project: Project;

  constructor(services: LangiumSharedCoreServices & SunwrightSharedOwnServices) {
    super(services);
    this.project = services.sunwright.Project;
  }

  protected override parse<T extends AstNode>(uri: URI, text: string): ParseResult<T> {
    this.project.update(uri.toString(), text);
    return emptyResult() as unknown as ParseResult<T>;
  }

  protected override async parseAsync<T extends AstNode>(uri: URI, text: string): Promise<ParseResult<T>> {
    return this.parse(uri, text);
  }

  /** A file that cannot be read is an empty document, and the project knows why. */
  protected override async getInitialText(uri: URI, _token: Cancellation.CancellationToken): Promise<string> {
    return (await this.read(uri)) ?? "";
  }

  override async update<T extends AstNode>(document: Writable<LangiumDocument<T>>): Promise<LangiumDocument<T>> {
    const open = this.textDocuments?.get(document.uri.toString());
    const text = open ? open.getText() : await this.read(document.uri);
    if (text !== undefined) {
      const { uri } = document;
      const known = open ?? TextDocument.create(uri.toString(), "sunwright", 0, text);
      Object.defineProperty(document, "textDocument", { value: known, configurable: true, enumerable: true });
      this.project.update(uri.toString(), text);
    }
    if (document.parseResult.value.$type !== "Source") {
      document.parseResult = emptyResult() as unknown as ParseResult<T>;
      (document.parseResult.value as Writable<AstNode>).$document = document as LangiumDocument;
    }
    document.state = DocumentState.Parsed;
    return document;
  }

  private async read(uri: URI): Promise<string | undefined> {
    const result = await readDesign(this.fileSystemProvider, uri.toString());
    if ("text" in result) return result.text;
    this.project.fail(uri.toString(), result.failure);
    return undefined;
  }
}

function emptyResult(): ParseResult<Source> {
  return { value: { $type: "Source", declarations: [] } as unknown as Source, parserErrors: [], lexerErrors: [] };
}

/** Looks for designs in the folders of a workspace, but not where programs keep what they made or fetched. */
export class SunwrightWorkspaceManager extends DefaultWorkspaceManager {
  override shouldIncludeEntry(entry: FileSystemNode): boolean {
    if (entry.isDirectory && UriUtils.basename(entry.uri) === "dist") return false;
    return super.shouldIncludeEntry(entry);
  }
}
