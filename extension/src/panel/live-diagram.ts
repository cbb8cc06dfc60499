import {
  commands,
  type Disposable,
  type ExtensionContext,
  l10n,
  type TextEditor,
  type WebviewPanel,
  window,
} from "vscode";
import { type BaseLanguageClient, State } from "vscode-languageclient";
import type { DiagramResult } from "../../../language-server/src/editor/lsp/diagram-requests";
import { designInFront, isDesign } from "../designs";
import type { DrawingWorker } from "../drawing/drawing-worker";
import { Latest } from "../drawing/latest";
import type { ExportWish } from "../export/export-drawing";
import { addressOf, ask } from "../requests";
import { DiagramPanel, type Listener } from "./diagram-panel";
import { type FromPage, firstView, type KeptState, type PanelView, type ToPage } from "./messages";
import { Moment } from "./moment";
import { Places } from "./places";
import { askChart, askedConditions, shownChart, titleOf } from "./shown-chart";
import { shownDesign, shownHead } from "./shown-design";
import { Teller } from "./teller";

/** The diagram of the design that is being edited: asked for again whenever its figures are new. */
export class LiveDiagram implements Disposable, Listener {
  private panel: DiagramPanel | undefined;
  private uri: string | undefined;
  private wanted: string | undefined;
  private view: PanelView = firstView;
  private places: Places;
  private drawn: { readonly key: string; readonly svg: string } | undefined;
  private shown: ToPage | undefined;
  private readonly latest = new Latest();
  private readonly teller: Teller;
  private moment: Moment;
  private readonly parts: Disposable[];

  constructor(
    private readonly context: ExtensionContext,
    private readonly client: BaseLanguageClient,
    private readonly worker: DrawingWorker,
  ) {
    this.places = new Places(client);
    this.moment = new Moment(client);
    this.teller = new Teller(client, context.extensionUri);
    this.parts = [
      client.onNotification("sunwright/designChanged", ({ uris }: { uris?: string[] }) => {
        if (this.uri !== undefined && (!uris || uris.includes(this.uri))) this.update();
      }),
      client.onDidChangeState(({ newState }) => {
        if (newState === State.Running) this.update();
      }),
      window.onDidChangeActiveTextEditor((editor) => this.follow(editor)),
      window.onDidChangeTextEditorSelection(({ textEditor }) => this.sayCursor(textEditor)),
    ];
  }

  show(): void {
    this.worker.warm();
    this.panel ??= DiagramPanel.open(this.context, this);
    this.panel.reveal();
    this.follow(designInFront());
  }

  restore(panel: WebviewPanel, kept: KeptState | undefined): void {
    this.panel?.close();
    this.panel = DiagramPanel.restore(panel, this.context, this);
    this.uri = kept?.uri;
    this.wanted = kept?.entry;
    this.view = kept?.view ?? firstView;
  }

  hear(message: FromPage): void {
    switch (message.is) {
      case "ready":
        if (this.shown) this.say(this.shown);
        this.update();
        break;
      case "go-to":
        void this.places.goTo(message.id, this.panel?.column);
        break;
      case "tell":
        void this.tell(message.id);
        break;
      case "follow":
        void this.teller.follow(message.href, this.panel?.column);
        break;
      case "rule":
        void this.teller.showRule(message.rule);
        break;
      case "choose":
        this.wanted = message.entry;
        this.update();
        break;
      case "view":
        this.view = message.view;
        this.update();
        break;
      case "export":
        void commands.executeCommand("sunwright.exportDrawing", this.exportWish());
        break;
      case "switching":
        this.moment.turn(message.on);
        this.update();
        break;
      case "switch":
        this.moment.toggle(message.id);
        this.update();
        break;
      case "close-all":
        this.moment.closeAll();
        this.update();
        break;
      case "mode":
        this.moment.choose(message.mode);
        this.update();
        break;
    }
  }

  closed(): void {
    this.panel = undefined;
    this.shown = undefined;
    this.view = firstView;
    this.moment = new Moment(this.client);
  }

  dispose(): void {
    for (const part of this.parts) part.dispose();
    this.panel?.close();
  }

  /** What is looked at. */
  private exportWish(): Partial<ExportWish> {
    const { tab, chosen, conditions } = this.view;
    return { uri: this.uri, design: this.wanted, what: chosen[tab] ?? tab, conditions: askedConditions(conditions) };
  }

  /** Turns to the design in front; when something else comes to the front, it stays with the last one. */
  private follow(editor: TextEditor | undefined): void {
    if (!this.panel || !editor || !isDesign(editor.document)) return;
    const uri = addressOf(this.client, editor.document);
    if (uri === this.uri) {
      this.sayCursor(editor);
    } else {
      this.uri = uri;
      this.update();
    }
  }

  private update(): void {
    if (!this.panel) return;
    this.latest
      .run(() => this.draw())
      .catch((error) => this.client.error("The diagram could not be drawn", error, false));
  }

  private async draw(): Promise<void> {
    const { uri } = this;
    if (uri === undefined) {
      this.say({
        is: "nothing",
        words: l10n.t("Open a design (a .sun file): its single-line diagram is drawn here as you type."),
      });
      return;
    }
    if (this.client.state !== State.Running) return;
    if (this.view.tab === "diagram") await this.drawDiagram(uri);
    else await this.drawChart(uri, this.view);
  }

  private async drawDiagram(uri: string): Promise<void> {
    const result = await ask<DiagramResult>(this.client, "sunwright/diagram", uri, { design: this.wanted });
    if (!result) return;
    const live = await this.moment.live(result.entry);
    const params = { diagram: result.diagram, ...(live && { states: live.states }) };
    const key = JSON.stringify(params);
    if (this.drawn?.key !== key) this.drawn = { key, svg: await this.worker.draw(params) };
    this.places = new Places(this.client, result.places);
    const design = shownDesign(uri, result, live?.shown);
    this.panel?.title(titleOf("diagram", design.site));
    this.say({ is: "design", design, svg: this.drawn.svg });
    if (window.activeTextEditor) this.sayCursor(window.activeTextEditor);
  }

  private async drawChart(uri: string, view: PanelView): Promise<void> {
    const result = await askChart(this.client, uri, this.wanted, view);
    if (!result) return;
    const svg = result.chart && (await this.worker.chart(result.chart));
    this.places = new Places(this.client, result.places);
    const head = shownHead(uri, result, result.title);
    this.panel?.title(titleOf(view.tab, head.site));
    this.say({ is: "chart", head, chart: shownChart(result, view, svg) });
  }

  private sayCursor(editor: TextEditor): void {
    if (!this.panel || this.view.tab !== "diagram" || !isDesign(editor.document) || editor !== window.activeTextEditor)
      return;
    const id = this.places.at(editor.document, editor.selection.active);
    this.panel.say({ is: "cursor", ...(id !== undefined && { id }) });
  }

  private async tell(id: string): Promise<void> {
    const place = this.places.find(id);
    const html = place && (await this.teller.tell(place));
    this.panel?.say({ is: "told", id, html: html ?? "" });
  }

  private say(message: ToPage): void {
    this.shown = message;
    this.panel?.say(message);
  }
}
