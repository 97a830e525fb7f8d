import { twistedEyeLength } from '@/lib/bom/developed-length';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { ModelFacts } from '@/lib/spec/model-facts';
import type { SpecBillLine } from '@/lib/spec/spec-model';

/** What the anchors of one piece take of a material. */
export interface BillNeed {
  readonly materialId: string;
  readonly name: string;
  readonly unit: SpecBillLine['quantityUnit'];
  /** Least quantity; 0: some of it, and how much is not told by the anchors. */
  readonly quantity: number;
  /** Whether more than that is wrong too, as with hooks, or usual, as with wire. */
  readonly isExact: boolean;
}

/** What a piece takes of every material that its anchors name; a length that is not known yet counts as none. */
export function billNeeds({ anchors, body }: ModelFacts): readonly BillNeed[] {
  const needs: Mutable[] = [];
  const add = ({ materialId, name }: Material, unit: BillNeed['unit'], quantity: number) => {
    const there = needs.find((need) => need.materialId === materialId);
    if (there === undefined) needs.push({ materialId, name, unit, quantity, isExact: unit === 'pieces' });
    else there.quantity += quantity;
  };
  const run = body === null ? 0 : body.tailMm - body.noseMm;
  const runs: string[] = [];
  for (const one of anchors) {
    const { kind, wire, adhesive, screwEye, hook, splitRing } = one.anchor;
    if (kind === 'screw-eye' && screwEye !== null) add(screwEye, 'pieces', 1);
    if (hook !== null) add(hook, 'pieces', 1);
    if (splitRing !== null) add(splitRing, 'pieces', 1);
    if (kind === 'twisted-wire' && wire !== null) add(wire, 'mm', twistedMm(one));
    if (kind === 'twisted-wire' && adhesive !== null) add(adhesive, 'g', 0);
    if (kind === 'through-wire' && wire !== null) {
      // One run from end to end for all the eyes that share it.
      add(wire, 'mm', loopMm(one) + (runs.includes(wire.materialId) ? 0 : run));
      runs.push(wire.materialId);
    }
  }
  return needs;
}

type Material = Pick<BillNeed, 'materialId' | 'name'>;
type Mutable = Omit<BillNeed, 'quantity'> & { quantity: number };

function twistedMm({ anchor }: AnchorFacts): number {
  const { wireDiameterMm, twistPitchMm, embedmentMm, eyeInsideMm } = anchor;
  if (wireDiameterMm === null || twistPitchMm === null || embedmentMm === null || eyeInsideMm === null) return 0;
  const wire = twistedEyeLength({
    wireDiameterMm,
    pitchMm: twistPitchMm,
    shankMm: embedmentMm,
    eyeInsideMm,
    loopDeg: 360,
    tailsMm: 0,
    trimMm: 0,
  });
  return wire.ok ? wire.cutMm : 0;
}

/** The loop of a wire that runs through. */
function loopMm({ anchor: { eyeInsideMm, wireDiameterMm } }: AnchorFacts): number {
  return eyeInsideMm === null || wireDiameterMm === null ? 0 : Math.PI * (eyeInsideMm + wireDiameterMm);
}
