import { expect, test } from "vitest";
import { Latest } from "../../extension/src/drawing/latest";

/** Something that takes until it is told to end. */
function slow(): { readonly done: Promise<void>; end(): void } {
  let end = (): void => {};
  const done = new Promise<void>((resolve) => {
    end = resolve;
  });
  return { done, end };
}

test("one thing is done at a time, and of those that come meanwhile only the newest", async () => {
  const latest = new Latest();
  const done: string[] = [];
  const [begun, first] = [slow(), slow()];
  const running = latest.run(async () => {
    done.push("first begins");
    begun.end();
    await first.done;
    done.push("first ends");
  });
  await begun.done;
  const waiting = [latest.run(async () => void done.push("second")), latest.run(async () => void done.push("third"))];
  first.end();
  await Promise.all([running, ...waiting]);
  expect(done).toEqual(["first begins", "first ends", "third"]);
});

test("what fails is told to who asked, and stops nothing after it", async () => {
  const latest = new Latest();
  await expect(latest.run(() => Promise.reject(new Error("lost")))).rejects.toThrow("lost");
  let isDone = false;
  await latest.run(async () => {
    isDone = true;
  });
  expect(isDone).toBe(true);
});
