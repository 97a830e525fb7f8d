import type { CardMix } from '@/lib/prepare/preparation';

/** Which joints, or which pieces, belong to a mix, in lines a person can work through: "Belly hanger: 1, 3, 5-9". */
export function jointLines(mix: CardMix, anchorName: (anchorId: string) => string): { name: string; pieces: string }[] {
  const byAnchor = new Map<string, number[]>();
  for (const { piece, anchorId } of mix.uses) {
    const name = anchorId === null ? 'Pieces' : anchorName(anchorId);
    byAnchor.set(name, [...(byAnchor.get(name) ?? []), piece]);
  }
  return [...byAnchor].map(([name, pieces]) => ({ name, pieces: rangesOf(pieces) }));
}

function rangesOf(numbers: readonly number[]): string {
  const sorted = numbers.toSorted((a, b) => a - b);
  const ranges: { from: number; to: number }[] = [];
  for (const number of sorted) {
    const last = ranges.at(-1);
    if (last !== undefined && number === last.to + 1) last.to = number;
    else ranges.push({ from: number, to: number });
  }
  return ranges.map(({ from, to }) => (from === to ? `${from}` : `${from}\u2013${to}`)).join(', ');
}
