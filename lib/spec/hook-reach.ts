import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { InputName } from '@/lib/spec/input-name';
import { sizeOrNull } from '@/lib/spec/usable';

/** Where a hook hangs in the body's middle plane, and how far it swings from there. */
export interface HookReach {
  readonly xMm: number;
  readonly zMm: number;
  readonly reachMm: number;
}

export type HookReachOutcome =
  | { readonly ok: true; readonly reach: HookReach }
  | { readonly ok: false; readonly missing: readonly InputName[] };

/** How far the hook of an anchor reaches round its eye: split ring and hook, laid end to end. */
export function hookReach(facts: AnchorFacts): HookReachOutcome {
  const { hook, splitRing } = facts.anchor;
  const hookMm = sizeOrNull(hook?.sheet?.lengthMm);
  const ringMm = splitRing === null ? 0 : sizeOrNull(splitRing.sheet?.lengthMm);
  const hangs = eyeMiddle(facts);
  if (hookMm === null || ringMm === null || hangs === null) {
    return {
      ok: false,
      missing: [
        ...(hookMm === null ? (['hook-length'] as const) : []),
        ...(ringMm === null ? (['ring-length'] as const) : []),
        ...(hangs === null ? (['place'] as const) : []),
      ],
    };
  }
  return { ok: true, reach: { ...hangs, reachMm: hookMm + ringMm } };
}

/** The middle of an anchor's eye, outside the body; null: where it is is not known. */
export function eyeMiddle({
  anchor,
  of: { path },
}: AnchorFacts): { readonly xMm: number; readonly zMm: number } | null {
  if (path === null) return null;
  const inside = anchor.kind === 'screw-eye' ? sizeOrNull(anchor.screwEye?.sheet?.eyeInsideMm) : anchor.eyeInsideMm;
  const out = 0.5 * (inside ?? 0);
  return { xMm: path.entryX - out * path.directionX, zMm: path.entryZ - out * path.directionZ };
}
