/** Lets everything else that waits have its turn: between two stretches of long work, so that a server goes on answering. */
export function othersFirst(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
