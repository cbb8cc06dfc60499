import type { FromPage, KeptState, ToPage } from "../src/panel/messages";
import type { Seen } from "./stage";

/** What the page keeps for itself beside what the extension restores from. */
export interface PageState extends KeptState {
  readonly seen?: Seen;
}

interface Host {
  postMessage(message: FromPage): void;
  getState(): PageState | undefined;
  setState(state: PageState): void;
}
declare function acquireVsCodeApi(): Host;

const host = acquireVsCodeApi();

export function say(message: FromPage): void {
  host.postMessage(message);
}

export function onMessage(hear: (message: ToPage) => void): void {
  window.addEventListener("message", ({ data }: MessageEvent<ToPage>) => hear(data));
}

export function kept(): PageState {
  return host.getState() ?? {};
}

export function keep(state: PageState): void {
  host.setState({ ...kept(), ...state });
}
