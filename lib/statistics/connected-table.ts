/**
 * Whether every treatment can be compared with every other through blocks they share. Numbered from 0.
 *
 * Throws nothing; levels without a cell make the table unconnected, one level alone is connected.
 */
export function isConnected(
  cells: readonly { readonly treatment: number; readonly block: number }[],
  treatments: number,
  blocks: number,
): boolean {
  const parent = Array.from({ length: treatments + blocks }, (_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while ((parent[at] ?? at) !== at) {
      parent[at] = parent[parent[at] ?? at] ?? at;
      at = parent[at] ?? at;
    }
    return at;
  };
  let parts = treatments + blocks;
  for (const { treatment, block } of cells) {
    const a = root(treatment);
    const b = root(treatments + block);
    if (a !== b) {
      parent[a] = b;
      parts -= 1;
    }
  }
  return parts === 1;
}
