/** Does one thing at a time; of those that come meanwhile only the newest waits, the others are left out. */
export class Latest {
  private running: Promise<void> = Promise.resolve();
  private newest = 0;

  /** Resolves when it is done, or when something newer has come in its place. */
  run(task: () => Promise<void>): Promise<void> {
    const own = ++this.newest;
    const done = this.running.then(async () => {
      if (own === this.newest) await task();
    });
    this.running = done.catch(() => undefined);
    return done;
  }
}
