import { chosen } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { figure } from '@/lib/spec/finding';
import type { InputName } from '@/lib/spec/input-name';
import { wireMm } from '@/lib/spec/quantity-words';
import { WIRE_REFUSAL_WORDS } from '@/lib/spec/reason-words';
import { type AnchorRule, type Judgement, missing } from '@/lib/spec/rule';
import { sizeOrNull } from '@/lib/spec/usable';

/** A diameter typed in mm may miss that of the sheet by rounding; the next gauge is ten times further. */
const SAME_WIRE_MM = 0.02;

/** Whether the wire is known well enough to say what it carries: diameter and temper, and both the sheet's. */
export const wireStatedRule: AnchorRule = {
  id: 'wire-stated',
  about: 'anchor',
  title: 'Diameter and temper of the wire are given',
  formula: "diameter and temper known, diameter that of the wire's sheet",
  source: chosen(
    'Stainless wire may be soft or spring, which differ three to four times; a gauge number names no size',
  ),
  assumptions: ['The spool is what its label says'],
  setFigure: null,
  check,
};

function check({ anchor, of }: AnchorFacts): Judgement | null {
  if (anchor.kind === 'screw-eye') return null;
  const { wire, wireDiameterMm, anchorId } = anchor;
  const inputs: InputName[] = [];
  if (wire === null) inputs.push('wire');
  if (wireDiameterMm === null) inputs.push('wire-diameter');
  if (wire !== null && wire.sheet === null) inputs.push('wire-figures', 'temper');
  if (wire?.sheet?.temper === null) inputs.push('temper');
  if (wire === null || wire.sheet === null || wireDiameterMm === null || inputs.length > 0) return missing(inputs);
  const diameterMm = sizeOrNull(wire.sheet.diameterMm);
  if (diameterMm === null) return missing(['wire-figures']);
  const figures = [figure('Wire', wireDiameterMm, 'wire-mm'), figure('By its sheet', diameterMm, 'wire-mm')];
  if (!(Math.abs(diameterMm - wireDiameterMm) <= SAME_WIRE_MM)) {
    return {
      verdict: 'short',
      words: ['The anchor says ', wireMm(wireDiameterMm), `, the sheet of ${wire.name} `, wireMm(diameterMm), '.'],
      figures,
      advice: ['Measure the wire, and name the one that it is.'],
      fixes: () => [
        {
          way: 'wire',
          words: ['It is ', wireMm(diameterMm), ', as the sheet says.'],
          changes: [{ kind: 'anchor', anchorId, set: { wireDiameterMm: diameterMm } }],
          size: 1,
          carries: null,
        },
      ],
    };
  }
  if (of.wire === null) {
    const why = of.wireRefusal === null ? '' : `: ${WIRE_REFUSAL_WORDS[of.wireRefusal]}`;
    return {
      verdict: 'not-judged',
      words: [`What it carries is not known${why}.`],
      figures,
      missing: ['wire-figures'],
    };
  }
  return {
    verdict: 'holds',
    words: [wireMm(wireDiameterMm), `, ${wire.sheet.temper ?? ''} temper.`],
    figures: [...figures, figure('Least tensile strength', of.wire.leastTensileMpa, 'MPa')],
  };
}
