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

/** Waits until what is asked is as wished; says what was asked last where that does not come about. */
async function untilShown<Answer>(
  test: Mocha.Context,
  what: string,
  isSo: (asked: Asked | undefined) => Answer | undefined | false | Promise<Answer | undefined | false>,
  milliseconds?: number,
): Promise<Answer> {
  let last: Asked | undefined;
  try {
    return await until(
      what,
      async () => {
        last = await shown(test);
        return isSo(last);
      },
      milliseconds,
    );
  } catch (error) {
    throw new Error(`${error instanceof Error ? error.message : error}; it is asked: ${last?.words}`);
  }
}

/** Waits until something is asked in whose words a text is. */
export function untilAsked(test: Mocha.Context, text: string): Promise<Asked> {
  return untilShown(test, `it is asked: ${text}`, (asked) => asked?.words.includes(text) && asked);
}

/** Waits until nothing is asked any more. */
export function untilAnswered(test: Mocha.Context): Promise<boolean> {
  return untilShown(test, "nothing more is asked", (asked) => asked === undefined);
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

/** Goes down a list to a row, and takes it. */
export async function choose(test: Mocha.Context, text: string): Promise<void> {
  await untilAsked(test, text);
  await until(`${text} is reached`, async () => {
    await later(150);
    const marked = await hand<string[]>(test, "words", { selector: `${widget} .monaco-list-row.focused` });
    if (marked.some((words) => words.includes(text))) return true;
    await hand(test, "press", { key: "ArrowDown" });
    return false;
  });
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

/** Gives the answer that stands there, or none. */
export async function take(test: Mocha.Context, question: string): Promise<void> {
  await untilAsked(test, question);
  await later(150);
  await hand(test, "press", { key: "Enter" });
}

/** Gives what stands there as the answer to one question after the other, the last one too. */
export async function takeAllUntil(test: Mocha.Context, last: string): Promise<void> {
  const isReached = async (asked: Asked | undefined) => {
    if (asked?.words.includes(last)) return true;
    await later(150);
    await hand(test, "press", { key: "Enter" });
    return false;
  };
  await untilShown(test, `it is asked: ${last}`, isReached, 60_000);
  await take(test, last);
}

/** Gives a command from the list of all of them, as the keys do. */
export async function command(test: Mocha.Context, title: string): Promise<void> {
  await hand(test, "press", { key: "F1" });
  await untilAsked(test, "name of a command");
  await later(150);
  await hand(test, "type", { text: title });
  await choose(test, title);
}
