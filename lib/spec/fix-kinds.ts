import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { SpecFix } from '@/lib/spec/spec-fix';

/** How much of a change it is to run a wire through, in sixteenths of depth. Chosen, as in `whatWouldHold`. */
const THROUGH_SIZE = 14;

/** A wire through the whole body in place of a glued shank: no hole, no glue, a closed eye. */
export function runThrough({ anchor }: Pick<AnchorFacts, 'anchor'>): readonly SpecFix[] {
  if (anchor.wire === null || anchor.wireDiameterMm === null) return [];
  return [
    {
      way: 'through',
      words: ['Run the wire through the body, with a closed eye.'],
      changes: [
        {
          kind: 'anchor',
          anchorId: anchor.anchorId,
          set: {
            kind: 'through-wire',
            isEyeClosed: true,
            twistPitchMm: null,
            bitDiameterMm: null,
            drillDepthMm: null,
            embedmentMm: null,
            adhesive: null,
          },
        },
      ],
      size: THROUGH_SIZE,
      carries: null,
    },
  ];
}
