/** Whether the long counts run. */
export const IS_SOAK = process.env.SOAK === '1';

/** `full` under SOAK=1, `short` otherwise. */
export function turns(full: number, short: number): number {
  return IS_SOAK ? full : short;
}
