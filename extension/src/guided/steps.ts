import { type Disposable, type InputBox, type QuickInput, QuickInputButtons, type QuickPickItem, window } from "vscode";

/** Where a step leads: on, back to the one before, to the same again, or out of it all. */
export type Moved = "next" | "back" | "again" | "away";

/** Where in a series a step is. */
export interface Stage {
  readonly title: string;
  readonly step: number;
  readonly total: number;
}
export type Step = (stage: Stage) => Promise<Moved>;

/**
 * Leads through steps, back and forth. Which steps there are is asked anew after each, because an answer may bring more
 * of them; what was answered is kept by whoever asks, so that nobody types anything twice. True where all were taken.
 */
export async function lead(title: string, steps: () => readonly Step[]): Promise<boolean> {
  for (let at = 0; ; ) {
    const now = steps();
    const step = now[at];
    if (!step) return true;
    const moved = await step({ title, step: at + 1, total: now.length });
    if (moved === "away") return false;
    if (moved === "next") at++;
    else if (moved === "back") at = Math.max(0, at - 1);
  }
}

/** What every question may say of itself. */
interface Question {
  /** What it is about, in a word or two; stays in sight where a message takes the place of the question. */
  readonly topic?: string;
}

interface TextQuestion extends Question {
  readonly prompt: string;
  readonly placeholder?: string;
  readonly value: string | undefined;
  /** Why an answer will not do; the question stays until it will. */
  readonly problem: (answer: string) => Promise<string | undefined> | string | undefined;
  readonly keep: (answer: string) => void;
}

/** Asks for a text. Nobody is told off while still typing: an answer is judged once it is given. */
export function askText({ topic, prompt, placeholder, value, problem, keep }: TextQuestion): Step {
  return (stage) => {
    const input = window.createInputBox();
    input.prompt = prompt;
    input.placeholder = placeholder;
    input.value = value ?? "";
    return shown(input, about(stage, topic), (done) => [
      input.onDidAccept(async () => {
        const answer = input.value.trim();
        const why = await judged(input, () => problem(answer));
        if (why !== undefined) return;
        keep(answer);
        done("next");
      }),
      input.onDidChangeValue((text) => {
        keep(text.trim());
        if (input.validationMessage) void judged(input, () => problem(text.trim()));
      }),
    ]);
  };
}

/** Shows what is wrong, if anything; an answer to a text that has changed meanwhile is of no interest. */
async function judged(input: InputBox, ask: () => ReturnType<TextQuestion["problem"]>): Promise<string | undefined> {
  const { value } = input;
  input.busy = true;
  try {
    const why = await ask();
    if (input.value === value) input.validationMessage = why;
    return why;
  } catch (error) {
    input.validationMessage = error instanceof Error ? error.message : String(error);
    return input.validationMessage;
  } finally {
    input.busy = false;
  }
}

export interface Option<Value> extends QuickPickItem {
  readonly value: Value;
}

interface ChoiceQuestion<Value> extends Question {
  readonly placeholder: string;
  readonly options: readonly (Option<Value> | QuickPickItem)[];
  /** The one that is marked when the list comes up. */
  readonly marked?: (value: Value) => boolean;
  /** Takes the answer; "again" asks once more. */
  readonly keep: (value: Value) => unknown;
}

/** Asks to choose one thing of a list. */
export function askChoice<Value>({ topic, placeholder, options, marked, keep }: ChoiceQuestion<Value>): Step {
  return (stage) => {
    const pick = window.createQuickPick<QuickPickItem>();
    pick.placeholder = placeholder;
    pick.matchOnDescription = true;
    pick.matchOnDetail = true;
    pick.items = options;
    const first = options.filter(isOption<Value>).find(({ value }) => marked?.(value));
    if (first) pick.activeItems = [first];
    return shown(pick, about(stage, topic), (done) => [
      pick.onDidAccept(async () => {
        const [item] = pick.selectedItems.length > 0 ? pick.selectedItems : pick.activeItems;
        if (item && isOption<Value>(item)) done((await keep(item.value)) === "again" ? "again" : "next");
      }),
    ]);
  };
}

interface SeveralQuestion<Value> extends Question {
  readonly placeholder: string;
  readonly options: readonly Option<Value>[];
  readonly chosen: (value: Value) => boolean;
  readonly keep: (values: readonly Value[]) => void;
}

/** Asks to choose any number of things of a list; none is an answer. */
export function askSeveral<Value>({ topic, placeholder, options, chosen, keep }: SeveralQuestion<Value>): Step {
  return (stage) => {
    const pick = window.createQuickPick<Option<Value>>();
    pick.placeholder = placeholder;
    pick.canSelectMany = true;
    pick.matchOnDetail = true;
    pick.items = options;
    pick.selectedItems = options.filter(({ value }) => chosen(value));
    return shown(pick, about(stage, topic), (done) => [
      pick.onDidAccept(() => {
        keep(pick.selectedItems.map(({ value }) => value));
        done("next");
      }),
    ]);
  };
}

function about(stage: Stage, topic: string | undefined): Stage {
  return topic === undefined ? stage : { ...stage, title: `${stage.title}: ${topic}` };
}

function isOption<Value>(item: QuickPickItem): item is Option<Value> {
  return "value" in item;
}

type Listening = QuickInput & {
  readonly onDidTriggerButton: InputBox["onDidTriggerButton"];
  buttons: InputBox["buttons"];
};

/** Shows an input at its place in the series until somebody is done with it. */
async function shown(
  input: Listening,
  { title, step, total }: Stage,
  listen: (done: (moved: Moved) => void) => Disposable[],
): Promise<Moved> {
  const listening: Disposable[] = [];
  try {
    return await new Promise<Moved>((done) => {
      input.title = title;
      input.step = step;
      input.totalSteps = total;
      // One looks up a sheet or a file in between.
      input.ignoreFocusOut = true;
      input.buttons = step > 1 ? [QuickInputButtons.Back] : [];
      listening.push(
        ...listen(done),
        input.onDidTriggerButton((button) => {
          if (button === QuickInputButtons.Back) done("back");
        }),
        input.onDidHide(() => done("away")),
      );
      input.show();
    });
  } finally {
    for (const each of listening) each.dispose();
    input.dispose();
  }
}
