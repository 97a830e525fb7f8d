/**
 * The letter after `letter`: A, B, ... Z, AA, AB, ... as columns of a sheet are counted.
 * Throws RangeError for anything but capital letters.
 */
export function nextRevisionLetter(letter: string): string {
  if (!/^[A-Z]{1,8}$/.test(letter)) throw new RangeError(`a revision needs 1 to 8 capital letters, got ${letter}`);
  const last = letter.at(-1) ?? 'A';
  const head = letter.slice(0, -1);
  if (last !== 'Z') return head + String.fromCharCode(last.charCodeAt(0) + 1);
  return head === '' ? 'AA' : `${nextRevisionLetter(head)}A`;
}

/** Order of two letters, for sorting: negative when `a` came before `b`. */
export function compareRevisionLetters(a: string, b: string): number {
  if (a.length !== b.length) return a.length - b.length;
  return a < b ? -1 : a > b ? 1 : 0;
}
