import { commands } from "vscode";
import { hand } from "./stage";
import { later, until } from "./until";

const widget = ".quick-input-widget:not([style*='display: none'])";

/** What a list or a box that asks something shows: its title, its words, and its box. */
export interface Asked {
  readonly title: string;
  readonly words: string;
}

async function shown(test: Mocha.Context): Promise<Asked | undefined> {
  const [words] = await hand<string[]>(test, "words", { selector: widget });
  const [title] = await hand<string[]>(test, "words", { selector: `${widget} .quick-input-title` });
  const hints = await hand<string[]>(test, "attribute", { selector: `${widget} input`, name: "placeholder" });
  return words === undefined ? undefined : { title: title ?? "", words: [words, ...hints].join("\n") };
}

/** Waits until something is asked in whose words a text is. */
export function untilAsked(test: Mocha.Context, text: string): Promise<Asked> {
  return until(`it is asked: ${text}`, async () => {
    const asked = await shown(test);
    return asked?.words.includes(text) && asked;
  });
}

/** Waits until nothing is asked any more. */
export function untilAnswered(test: Mocha.Context): Promise<boolean> {
  return until("nothing more is asked", async () => (await shown(test)) === undefined);
}

/** Types an answer in place of what is there, and gives it. */
export async function answer(test: Mocha.Context, text: string): Promise<void> {
  // The box is there a moment before the keys go to it.
  await later(150);
  await hand(test, "press", { key: "Control+a" });
  if (text === "") await hand(test, "press", { key: "Delete" });
  else await hand(test, "type", { text });
  await later(150);
  await untilMarked(test, text);
  await hand(test, "press", { key: "Enter" });
}

/** A list marks the row that fits what was typed a moment later; a box for text has no rows. */
async function untilMarked(test: Mocha.Context, text: string): Promise<void> {
  const row = `${widget} .quick-input-list:not([style*='display: none']) .monaco-list-row`;
  await until(`${text} is marked`, async () => {
    if ((await hand<number>(test, "count", { selector: row })) === 0) return true;
    const marked = await hand<string[]>(test, "words", { selector: `${row}.focused` });
    return marked.some((words) => words.includes(text));
  });
}

/** Goes back to the question before, as the key for it does. */
export async function goBack(): Promise<void> {
  await later(150);
  await commands.executeCommand("workbench.action.quickInputBack");
}
