/** Asks again and again until the answer is one, and gives it; rejects with the last answer after some time. */
export async function until<Answer>(
  what: string,
  ask: () => Answer | undefined | false | Thenable<Answer | undefined | false>,
  milliseconds = 20_000,
): Promise<Answer> {
  const end = Date.now() + milliseconds;
  for (;;) {
    const answer = await ask();
    if (answer !== undefined && answer !== false) return answer;
    if (Date.now() > end) throw new Error(`It did not come about that ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

export function later(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
