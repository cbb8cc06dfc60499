import type { BaseLanguageClient } from "vscode-languageclient";
import type { Mode } from "../../../language-server/src/circuit/modes";
import type { LiveParts } from "../../../language-server/src/editor/diagram/live-parts";
import { ask } from "../requests";
import type { ShownLive } from "./messages";

/** What somebody has switched in the picture, to see what stays live. Nothing of it is written anywhere. */
export class Moment {
  private isOn = false;
  private mode: Partial<Mode> = {};
  private readonly open = new Set<string>();

  constructor(private readonly client: BaseLanguageClient) {}

  turn(isOn: boolean): void {
    this.isOn = isOn;
  }

  choose(mode: Partial<Mode>): void {
    this.mode = mode;
  }

  /** Opens what is closed and closes what is open. */
  toggle(id: string): void {
    this.isOn = true;
    if (!this.open.delete(id)) this.open.add(id);
  }

  closeAll(): void {
    this.open.clear();
  }

  /** What is live at this moment in the design that begins in a file; undefined while nobody switches. */
  async live(entry: string): Promise<{ readonly states: LiveParts["states"]; readonly shown: ShownLive } | undefined> {
    if (!this.isOn) return undefined;
    const { mode } = this;
    const parts = await ask<LiveParts>(this.client, "sunwright/liveParts", entry, { open: [...this.open], ...mode });
    if (!parts) return undefined;
    const { states, notCounted, ...words } = parts;
    // What the text no longer has, or never could be opened, is not remembered.
    for (const id of this.open) if (!parts.open.includes(id)) this.open.delete(id);
    return { states, shown: { ...words, mode, notCounted: notCounted.map(({ device, why }) => `${device}: ${why}`) } };
  }
}
