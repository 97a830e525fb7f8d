import { type FishingLine, OVERTEST, USUAL_KNOT_SHARE } from '@/lib/strength/fishing-line';
import type { AnchorStrength, FailureResult, FailureWay } from '@/lib/strength/strength-result';

/** The links between rod and fish, in that order. */
export const CHAIN_LINKS = ['line', 'split-ring', 'hook', 'eye', 'anchor'] as const;
export type ChainLinkName = (typeof CHAIN_LINKS)[number];

/** What a link carries. */
export interface ChainLink {
  readonly name: ChainLinkName;
  /** Lower value; of the line, its label at the knot. Null: not known. */
  readonly lowerN: number | null;
}

export interface ChainStrength {
  readonly links: readonly ChainLink[];
  /** The least of those that are known. */
  readonly goesFirst: ChainLink | null;
  /** The least besides the line of those that are known. */
  readonly weakestOther: ChainLink | null;
  /** The most the line can pull before it goes, N; null without a line. */
  readonly linePullsN: number | null;
  /** Whether the line goes before any other link even if it overtests; null: a link is not known. */
  readonly isLineTheFuse: boolean | null;
}

/** A fitting on an anchor; its strength null: not stated. */
export interface ChainFitting {
  readonly statedStrengthN: number | null;
}

export interface ChainParts {
  readonly line: FishingLine | null;
  /** Null: none on this anchor. */
  readonly splitRing: ChainFitting | null;
  readonly hook: ChainFitting | null;
  readonly anchor: AnchorStrength | null;
}

/** Ways that are the eye's or the wire's own; the other ultimate ways are the anchorage. */
const EYE_WAYS: readonly FailureWay[] = ['wire-in-eye', 'eye-opens', 'through-wire', 'screw-core', 'screw-eye-stated'];

/** Which link of an anchor's chain goes first, in a straight pull. */
export function chainStrength({ line, splitRing, hook, anchor }: ChainParts): ChainStrength {
  const knot = line?.knotShare ?? USUAL_KNOT_SHARE;
  const others: ChainLink[] = [];
  if (splitRing !== null) others.push({ name: 'split-ring', lowerN: splitRing.statedStrengthN });
  if (hook !== null) others.push({ name: 'hook', lowerN: hook.statedStrengthN });
  others.push(...anchorLinks(anchor));
  const links: ChainLink[] = [{ name: 'line', lowerN: line === null ? null : line.labelN * knot }, ...others];
  const linePullsN = line === null ? null : line.labelN * OVERTEST[line.type] * knot;
  const weakestOther = weakest(others);
  const isKnown = linePullsN !== null && others.every((link) => link.lowerN !== null);
  return {
    links,
    goesFirst: weakest(links),
    weakestOther,
    linePullsN,
    isLineTheFuse: isKnown && weakestOther?.lowerN != null ? linePullsN <= weakestOther.lowerN : null,
  };
}

function anchorLinks(anchor: AnchorStrength | null): readonly ChainLink[] {
  if (anchor === null) return [{ name: 'anchor', lowerN: null }];
  const ultimate = anchor.ways.filter(({ role, load }) => role === 'ultimate' && load !== 'at-angle');
  const eye = ultimate.filter(({ way }) => EYE_WAYS.includes(way));
  const wood = ultimate.filter(({ way }) => !EYE_WAYS.includes(way));
  const links: ChainLink[] = [];
  if (eye.length > 0) links.push({ name: 'eye', lowerN: leastOf(eye) });
  // A wire that runs through has no anchorage besides itself.
  if (wood.length > 0) links.push({ name: 'anchor', lowerN: leastOf(wood) });
  return links;
}

function leastOf(ways: readonly FailureResult[]): number | null {
  let least = Number.POSITIVE_INFINITY;
  for (const { result } of ways) {
    if (result.kind === 'no-estimate') return null;
    least = Math.min(least, result.lowerN);
  }
  return least;
}

function weakest(links: readonly ChainLink[]): ChainLink | null {
  return links.reduce<ChainLink | null>(
    (least, link) => (link.lowerN !== null && (least?.lowerN == null || link.lowerN < least.lowerN) ? link : least),
    null,
  );
}
