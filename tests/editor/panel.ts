import { commands } from "vscode";
import { hand } from "./stage";
import { until } from "./until";

/** What an element of the diagram's panel is like. */
export interface Look {
  readonly count: number;
  readonly words: string;
  readonly hasFocus: boolean;
  readonly attributes: Readonly<Record<string, string>>;
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly window: { readonly width: number; readonly height: number };
}

/** The first of the elements that are meant; null where there is none. */
export function look(test: Mocha.Context, selector: string): Promise<Look | null> {
  return hand<Look | null>(test, "inPanel", { selector });
}

/** What an element of the panel is like once it is as wished. */
export async function seen(
  test: Mocha.Context,
  what: string,
  selector: string,
  isSo: (look: Look) => boolean = () => true,
  milliseconds?: number,
): Promise<Look> {
  let last: Look | null = null;
  try {
    return await until(
      what,
      async () => {
        last = await look(test, selector);
        return last !== null && isSo(last) && last;
      },
      milliseconds,
    );
  } catch (error) {
    throw new Error(`${error instanceof Error ? error.message : error}; ${selector} is ${JSON.stringify(last)}`);
  }
}

export function clickInPanel(test: Mocha.Context, selector: string): Promise<void> {
  return hand(test, "clickInPanel", { selector });
}

/** Puts the focus on something in the panel, which stands beside the text, so that keys go there. */
export async function focusInPanel(test: Mocha.Context, selector: string): Promise<void> {
  // A click does not always take the keys along into a page that stands in a frame; the editor does.
  await commands.executeCommand("workbench.action.focusSecondEditorGroup");
  await hand(test, "focusInPanel", { selector });
}

/** The element of an item or run. */
export function thing(id: string): string {
  return `[data-id="${id}"]`;
}
