import { designOf, lengthen } from "./design.js";
import { type Question, Session } from "./session.js";
import { digits, median, quantile, timed } from "./statistics.js";

/**
 * What a user waits for who asks something: each request through real pipes, right after an edit, so that nothing of
 * the answer is known yet.
 */

const lines = 1_000;
const rounds = 40;
/** Milliseconds; for what is asked at every stop of the cursor or the mouse. */
const goal = 20;

interface Asked {
  readonly name: string;
  readonly method: string;
  readonly hasGoal?: boolean;
  readonly question: (round: number) => Question;
}

export async function reportRequests(server: string): Promise<void> {
  const text = designOf(lines);
  const session = await Session.open(server, "sunwright", text, false);
  const { offset, texts } = lengthen(text);
  const times = new Map<string, number[]>();
  const all = questions(text, offset);
  const answered = new Set<string>();
  for (let round = 0; round < rounds; round++) {
    for (const { name, method, question } of all) {
      // With the finding and without: each edit undoes the one before.
      for (const key of texts) {
        await session.edit(offset, key, () => true);
        let answer: unknown;
        const time = await timed(async () => {
          answer = await session.ask(method, question(round));
        });
        if (saysSomething(answer)) answered.add(name);
        const own = times.get(name);
        if (own) own.push(time);
        else times.set(name, [time]);
      }
    }
  }
  await session.close();
  // A measurement of answers that say nothing is none.
  for (const { name } of all) if (!answered.has(name)) throw new Error(`Nothing was ever answered to ${name}`);
  console.log(`\nRequests on ${lines} lines, right after an edit, through pipes, ms`);
  for (const { name, hasGoal } of all) {
    const warm = times.get(name)!.slice(rounds / 2);
    const p95 = quantile(warm, 0.95);
    const verdict = hasGoal ? (p95 < goal ? "met " : "MISS") : "    ";
    console.log(
      `${verdict}  ${name.padEnd(24)} median ${digits(median(warm)).padStart(5)}  p95 ${digits(p95).padStart(5)}`,
    );
  }
}

function saysSomething(answer: unknown): boolean {
  return Array.isArray(answer) ? answer.length > 0 : answer !== null && answer !== undefined;
}

function questions(text: string, edited: number): Asked[] {
  const places = (pattern: RegExp): number[] =>
    [...text.matchAll(pattern)].map(({ index, 0: found }) => index + found.length - 1);
  const strings = places(/^string S\d+a/gm);
  const runs = places(/^run W\d+a/gm);
  const devices = places(/^isolator Q\d+a/gm);
  const ends = places(/^run W\d+c from Q/gm);
  const blocks = places(/^ {4}tilt: /gm);
  const inverters = places(/^inverter INV\d+/gm);
  const of = (list: readonly number[], round: number): number => list[round % list.length]!;
  const page = { from: edited - 1500, to: edited + 1500 };
  const whole = { from: 0, to: text.length };
  const context = { diagnostics: [] };
  return [
    {
      name: "hover, string",
      method: "textDocument/hover",
      hasGoal: true,
      question: (round) => ({ at: of(strings, round) }),
    },
    { name: "hover, run", method: "textDocument/hover", hasGoal: true, question: (round) => ({ at: of(runs, round) }) },
    {
      name: "hover, isolator",
      method: "textDocument/hover",
      hasGoal: true,
      question: (round) => ({ at: of(devices, round) }),
    },
    {
      name: "hover, inverter",
      method: "textDocument/hover",
      hasGoal: true,
      question: (round) => ({ at: of(inverters, round) }),
    },
    {
      name: "completion, run's end",
      method: "textDocument/completion",
      hasGoal: true,
      question: (round) => ({ at: of(ends, round) + 1 }),
    },
    {
      name: "completion, property",
      method: "textDocument/completion",
      hasGoal: true,
      question: (round) => ({ at: of(blocks, round) - 2 }),
    },
    {
      name: "completion, new line",
      method: "textDocument/completion",
      hasGoal: true,
      question: () => ({ at: text.length }),
    },
    { name: "hints, one page", method: "textDocument/inlayHint", hasGoal: true, question: () => page },
    { name: "hints, whole file", method: "textDocument/inlayHint", hasGoal: true, question: () => whole },
    {
      name: "code actions, finding",
      method: "textDocument/codeAction",
      hasGoal: true,
      question: () => ({ from: edited, to: edited, context }),
    },
    {
      name: "code actions, run",
      method: "textDocument/codeAction",
      hasGoal: true,
      question: (round) => ({ from: of(runs, round), to: of(runs, round), context }),
    },
    {
      name: "code actions, string",
      method: "textDocument/codeAction",
      hasGoal: true,
      question: (round) => ({ from: of(strings, round), to: of(strings, round), context }),
    },
    { name: "code lens", method: "textDocument/codeLens", question: () => ({}) },
    { name: "colours, whole file", method: "textDocument/semanticTokens/full", question: () => ({}) },
    { name: "outline", method: "textDocument/documentSymbol", question: () => ({}) },
    { name: "signature", method: "textDocument/signatureHelp", question: (round) => ({ at: of(ends, round) }) },
    {
      name: "fed from",
      method: "textDocument/prepareCallHierarchy",
      question: (round) => ({ at: of(devices, round) }),
    },
    {
      name: "format",
      method: "textDocument/formatting",
      question: () => ({ options: { tabSize: 4, insertSpaces: true } }),
    },
  ];
}
