import { beforeEach, expect, test, vi } from "vitest";
import type { WebviewPanel } from "vscode";
import type { DrawingWorker } from "../../extension/src/drawing/drawing-worker";
import { LiveDiagram } from "../../extension/src/panel/live-diagram";
import type { FromPage, KeptState } from "../../extension/src/panel/messages";

// As much of the editor as a panel that it brings back comes to.
vi.mock("vscode", async () => {
  const { URI: Uri, Utils } = await import("vscode-uri");
  const never = () => ({ dispose: () => {} });
  return {
    Uri: Object.assign(Uri, { joinPath: Utils.joinPath }),
    ViewColumn: {},
    l10n: { t: (words: string) => words },
    env: { language: "en" },
    commands: {},
    workspace: { asRelativePath: (uri: { path: string }) => uri.path },
    window: { onDidChangeActiveTextEditor: never, onDidChangeTextEditorSelection: never, visibleTextEditors: [] },
  };
});
vi.mock("vscode-languageclient", () => ({ State: { Running: 2 } }));

interface Asked {
  readonly method: string;
  readonly params: object;
}
let asked: Asked[];
beforeEach(() => {
  asked = [];
});

/** A panel that the editor brings back with what its page kept, and what its page then says. */
async function restored(kept: KeptState | undefined): Promise<(message: FromPage) => void> {
  const { URI } = await import("vscode-uri");
  const never = () => ({ dispose: () => {} });
  const client = {
    state: 2,
    onNotification: never,
    onDidChangeState: never,
    sendRequest: async (method: string, params: object) => {
      asked.push({ method, params });
      return null;
    },
  };
  let say: ((message: FromPage) => void) | undefined;
  const panel = {
    onDidDispose: never,
    webview: {
      asWebviewUri: (uri: object) => uri,
      cspSource: "",
      postMessage: async () => true,
      onDidReceiveMessage: (hear: (message: FromPage) => void) => {
        say = hear;
        return never();
      },
    },
  };
  const context = { extensionUri: URI.file("/extension") };
  type Needs = ConstructorParameters<typeof LiveDiagram>;
  const diagram = new LiveDiagram(context as Needs[0], client as unknown as Needs[1], {} as DrawingWorker);
  diagram.restore(panel as unknown as WebviewPanel, kept);
  return say!;
}

const house = { uri: "file:///house/roof.sun", entry: "file:///house/rowan.sun" };

test("a panel that is brought back asks for what was looked at: the design, the chart, its conditions", async () => {
  const view = { tab: "curve", chosen: { curve: "curve:INV.pv2" }, conditions: { irradiance: 640, cell: 50 } } as const;
  const say = await restored({ ...house, view });
  expect(asked).toEqual([]);
  say({ is: "ready" });
  await vi.waitFor(() => expect(asked).toHaveLength(1));
  expect(asked[0]).toEqual({
    method: "sunwright/chart",
    params: {
      textDocument: { uri: house.uri },
      design: house.entry,
      chart: "curve:INV.pv2",
      conditions: { irradiance: 640, cell: 323.15 },
    },
  });
});

test("one whose page kept no view shows the diagram of its design", async () => {
  const say = await restored(house);
  say({ is: "ready" });
  await vi.waitFor(() => expect(asked).toHaveLength(1));
  expect(asked[0]).toEqual({
    method: "sunwright/diagram",
    params: { textDocument: { uri: house.uri }, design: house.entry },
  });
});

test("one whose page kept nothing asks for nothing, and waits for a design", async () => {
  const say = await restored(undefined);
  say({ is: "ready" });
  say({ is: "view", view: { tab: "margins", chosen: {}, conditions: { irradiance: 1000, cell: 25 } } });
  await new Promise((resolve) => setTimeout(resolve));
  expect(asked).toEqual([]);
});
