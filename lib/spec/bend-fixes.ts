import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { drillFor, roundedUpMm } from '@/lib/spec/deepest-hole';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { mm, wireMm } from '@/lib/spec/quantity-words';
import type { SpecFix } from '@/lib/spec/spec-fix';
import { withWire } from '@/lib/strength/wire-choice';

/** Depths that are offered: from there on a shank hinges in the wood, and more of it does not help. */
const OFFERED_STEPS = 4;

/** What would keep a glued shank from bending: a little deeper, or a thicker wire. Candidates, to be tried. */
export function bendFixes({ anchor, of: { design } }: AnchorFacts, { context }: ModelFacts): readonly SpecFix[] {
  if (design?.kind !== 'twisted-wire') return [];
  const { anchorId, drillDepthMm } = anchor;
  const { incrementMm } = context.settings;
  const deeper = Array.from({ length: OFFERED_STEPS }, (_, i): SpecFix => {
    const embedmentMm = roundedUpMm(design.embedmentMm + (i + 1) * incrementMm, context.settings);
    return {
      way: 'deeper',
      words: ['Glue it ', mm(embedmentMm), ' deep.'],
      changes: [{ kind: 'anchor', anchorId, set: { embedmentMm, drillDepthMm: drillFor(embedmentMm, drillDepthMm) } }],
      size: i + 1,
      carries: null,
    };
  });
  const thicker = context.wires
    .filter(({ wire }) => wire.diameterMm > design.wire.diameterMm)
    .map((choice): SpecFix => {
      const { wire, bitDiameterMm, twistPitchMm } = withWire(design, choice);
      return {
        way: 'wire',
        words: [`Use ${choice.name} (`, wireMm(wire.diameterMm), ') in a ', wireMm(bitDiameterMm), ' hole.'],
        changes: [
          {
            kind: 'anchor',
            anchorId,
            set: { wire: choice.material, wireDiameterMm: wire.diameterMm, bitDiameterMm, twistPitchMm },
          },
        ],
        size: 4 + 10 * (wire.diameterMm / design.wire.diameterMm - 1),
        carries: null,
      };
    });
  return [...deeper, ...thicker];
}
