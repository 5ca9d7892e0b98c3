/** Runs tasks one after the other in the order in which they were given; a task that fails does not stop the next. */
export class Serial {
  private tail: Promise<unknown> = Promise.resolve();
  private left = 0;

  /** Tasks given and not ended. */
  get waiting(): number {
    return this.left;
  }

  run<T>(task: () => Promise<T>): Promise<T> {
    this.left += 1;
    const done = this.tail.then(task).finally(() => {
      this.left -= 1;
    });
    this.tail = done.catch(() => undefined);
    return done;
  }
}
