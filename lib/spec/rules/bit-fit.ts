import type { FigureSource } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { figure } from '@/lib/spec/finding';
import { wireMm } from '@/lib/spec/quantity-words';
import { type AnchorRule, type Judgement, missing } from '@/lib/spec/rule';
import type { SpecFix } from '@/lib/spec/spec-fix';
import { sizeOrNull } from '@/lib/spec/usable';
import { THICK_GLUE_MM, USUAL_INTERFERENCE_MM } from '@/lib/strength/bond-factors';
import { usualBitMm } from '@/lib/strength/wire-choice';
import { inches } from '@/lib/units/force-and-length';

/** Gap from wall to wire from which on glue is wasted and the wire leans as it will. Chosen: a 64th of an inch. */
const LOOSE_GAP_MM = inches(1 / 64);
const ROUNDING_MM = 0.0005;
/** Core of a screw's thread over its outside. Chosen, as in the strength of its core. */
const CORE_SHARE = 0.7;

const SOURCE: FigureSource = {
  kind: 'common-practice',
  text: 'A .041 in pair (.082) in a 5/64 in hole (.078), common practice, no source; glue to 0.040 in by lap joints (read)',
};

/** Whether wire and bit go together. */
export const bitFitRule: AnchorRule = {
  id: 'bit-fit',
  about: 'anchor',
  title: 'The bit suits the wire',
  formula: 'pair − bit ≤ 0.005 in, and (bit − pair) / 2 ≤ 0.040 in, pair = 2 × wire; a screw: bit < thread',
  source: SOURCE,
  assumptions: ['A twisted pair is twice its wire thick'],
  setFigure: null,
  check,
};

function check({ anchor }: AnchorFacts): Judgement | null {
  switch (anchor.kind) {
    case 'twisted-wire':
      return pairInHole(anchor);
    case 'screw-eye':
      return threadInHole(anchor);
    case 'through-wire':
      return null;
  }
}

function pairInHole({ anchorId, wireDiameterMm, bitDiameterMm }: AnchorFacts['anchor']): Judgement {
  if (wireDiameterMm === null || bitDiameterMm === null) {
    return missing([
      ...(wireDiameterMm === null ? (['wire-diameter'] as const) : []),
      ...(bitDiameterMm === null ? (['bit'] as const) : []),
    ]);
  }
  const pair = 2 * wireDiameterMm;
  const tight = pair - bitDiameterMm;
  const gap = 0.5 * (bitDiameterMm - pair);
  const figures = [
    figure('Twisted pair', pair, 'wire-mm'),
    figure('Bit', bitDiameterMm, 'wire-mm'),
    tight > 0 ? figure('Interference', tight, 'wire-mm') : figure('Gap all round', gap, 'wire-mm'),
  ];
  const names = ['The pair is ', wireMm(pair), ', the hole ', wireMm(bitDiameterMm)] as const;
  const fixes = () => usualBit(anchorId, wireDiameterMm, bitDiameterMm);
  if (tight > USUAL_INTERFERENCE_MM + ROUNDING_MM) {
    const words = [...names, ': too tight, it would wipe the glue off the wall or split the wood.'];
    return { verdict: 'short', words, figures, advice: ['Take a wider bit.'], fixes };
  }
  if (gap > THICK_GLUE_MM + ROUNDING_MM) {
    const words = [...names, ': so loose that the wire stands in glue alone.'];
    return { verdict: 'short', words, figures, advice: ['Take a thinner bit.'], fixes };
  }
  const cautions =
    tight > ROUNDING_MM
      ? [
          [
            'A slight interference, ',
            wireMm(tight),
            ': glue is wiped off the wall. Wet hole and wire, and screw the pair in.',
          ],
        ]
      : gap > LOOSE_GAP_MM
        ? [
            [
              'A gap of ',
              wireMm(gap),
              ' all round wastes glue and lets the wire lean: hold it upright until it is set.',
            ],
          ]
        : [];
  return { verdict: 'holds', words: [...names, '.'], figures, cautions };
}

function usualBit(anchorId: string, wireDiameterMm: number, fromMm: number): readonly SpecFix[] {
  const bitDiameterMm = usualBitMm(wireDiameterMm);
  return [
    {
      way: 'bit',
      words: ['Drill it with a ', wireMm(bitDiameterMm), ' bit.'],
      changes: [{ kind: 'anchor', anchorId, set: { bitDiameterMm } }],
      size: Math.abs(bitDiameterMm - fromMm) / inches(1 / 64),
      carries: null,
    },
  ];
}

function threadInHole({ anchorId, bitDiameterMm, screwEye }: AnchorFacts['anchor']): Judgement | null {
  // A screw eye may go in behind an awl: no bit, nothing to judge.
  if (bitDiameterMm === null) return null;
  const thread = sizeOrNull(screwEye?.sheet?.threadDiameterMm);
  if (thread === null) return missing([screwEye === null ? 'screw-eye' : 'screw-eye-figures']);
  const figures = [figure('Thread', thread, 'wire-mm'), figure('Bit', bitDiameterMm, 'wire-mm')];
  const names = ['The thread is ', wireMm(thread), ', the hole ', wireMm(bitDiameterMm)] as const;
  if (!(bitDiameterMm < thread - ROUNDING_MM)) {
    const pilotMm = CORE_SHARE * thread;
    return {
      verdict: 'short',
      words: [...names, ': the thread finds no wood.'],
      figures,
      advice: ['Drill a pilot hole about as thick as the core of the thread.'],
      fixes: () => [
        {
          way: 'bit',
          words: ['Drill a pilot hole of ', wireMm(pilotMm), '.'],
          changes: [{ kind: 'anchor', anchorId, set: { bitDiameterMm: pilotMm } }],
          size: 1,
          carries: null,
        },
      ],
    };
  }
  const isWide = bitDiameterMm > 0.9 * thread;
  return {
    verdict: 'holds',
    words: [...names, '.'],
    figures,
    cautions: isWide ? [['The hole leaves little wood for the thread.']] : [],
  };
}
