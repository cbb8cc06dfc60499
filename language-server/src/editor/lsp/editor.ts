import { UriUtils } from "langium";
import type { Connection } from "vscode-languageserver";
import { readSeverities, type Severities } from "../../assessment/severities.js";
import type { ChunkParser } from "../../language/chunk-parser.js";
import type { SunwrightServices, SunwrightSharedServices } from "../../language/module.js";
import type { Links } from "../hover/check.js";
import { defaultSettings, readSettings, type Settings } from "../settings.js";
import { WorkspaceView } from "../workspace-view.js";
import { Positions } from "./positions.js";
import { sameData } from "./same-data.js";
import { SettingsFiles } from "./settings-files.js";

/** What all requests of one editor share: the computed designs, positions, and what the user has chosen. */
export class Editor {
  readonly view: WorkspaceView;
  readonly positions: Positions;
  /** Whether the editor takes texts with places to fill in. */
  knowsSnippets = false;
  /** Whether it asks for the edits of an action once that is chosen. */
  asksForEdits = false;
  /** Whether an edit may make files. */
  makesFiles = false;
  /** Its command that begins to rename what stands at a place; undefined where it has none. */
  renameCommand: string | undefined;
  /** Called when findings may have to be shown otherwise. */
  onSeverities: () => void = () => {};
  readonly settingsFiles: SettingsFiles;
  private readonly merged = new Map<
    string,
    { readonly own: unknown; readonly file: Severities; readonly both: Severities }
  >();
  private readonly spellings = new Map<string, string>();
  private chosen = defaultSettings;

  constructor(readonly services: SunwrightSharedServices) {
    const project = services.sunwright.Project;
    this.view = new WorkspaceView(project);
    this.positions = new Positions(
      project,
      (uri) => this.spellings.get(uri) ?? uri,
      (uri) => services.workspace.TextDocuments.get(uri),
    );
    this.settingsFiles = new SettingsFiles(
      services.workspace.FileSystemProvider,
      () => this.connection,
      () => this.onSeverities(),
    );
    project.onChange((uri) => {
      if (!project.has(uri)) this.view.forget(uri);
    });
  }

  /** For texts that stand in no file. The language is registered after the services that all languages share. */
  get parser(): ChunkParser {
    return (this.services.ServiceRegistry.all[0] as SunwrightServices).sunwright.ChunkParser;
  }

  /**
   * Notes how the editor writes an address: it may escape other characters than we do, and some editors then do not
   * know it again.
   */
  spell(uri: string): void {
    const own = UriUtils.normalize(uri);
    if (own === uri) this.spellings.delete(own);
    else this.spellings.set(own, uri);
  }

  get settings(): Settings {
    return this.chosen;
  }

  /** Takes the user's settings as they come over the wire; true where anything is different. */
  choose(given: unknown): boolean {
    const next = readSettings(given, this.chosen);
    const isNew = !sameData(next, this.chosen);
    if (next.severity !== this.chosen.severity)
      for (const { message } of readSeverities(next.severity).faults)
        this.connection?.console.warn(`sunwright.severity: ${message}`);
    this.chosen = next;
    return isNew;
  }

  /** What findings are shown as: as the user chose, but what a file beside the design says is so for everybody. */
  readonly severities = (entry: string): Severities => {
    const file = this.settingsFiles.of(entry);
    const own = this.chosen.severity;
    const known = this.merged.get(entry);
    if (known && known.own === own && known.file === file) return known.both;
    const both = new Map([...readSeverities(own).severities, ...file]);
    this.merged.set(entry, { own, file, both });
    return both;
  };

  get links(): Links {
    return {
      to: (place) => (this.view.isLive(place) ? this.positions.link(place) : undefined),
      docs: this.chosen.docs,
    };
  }

  get connection(): Connection | undefined {
    return this.services.lsp.Connection;
  }
}

const editors = new WeakMap<SunwrightSharedServices, Editor>();

/** The one editor of some services. */
export function editorOf(services: SunwrightSharedServices): Editor {
  let editor = editors.get(services);
  if (!editor) {
    editor = new Editor(services);
    editors.set(services, editor);
  }
  return editor;
}
