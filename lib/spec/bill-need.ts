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
export function billNeeds(facts: ModelFacts): readonly BillNeed[] {
  const needs = new Map<string, BillNeed>();
  const add = (need: BillNeed) => {
    const there = needs.get(need.materialId)?.quantity ?? 0;
    needs.set(need.materialId, { ...need, quantity: there + need.quantity });
  };
  for (const one of facts.anchors) {
    const { kind, wire, adhesive, screwEye, hook, splitRing } = one.anchor;
    for (const fitting of [kind === 'screw-eye' ? screwEye : null, hook, splitRing]) {
      if (fitting !== null) add({ ...named(fitting), unit: 'pieces', quantity: 1, isExact: true });
    }
    if (kind !== 'screw-eye' && wire !== null) {
      add({
        ...named(wire),
        unit: 'mm',
        quantity: kind === 'twisted-wire' ? twistedMm(one) : loopMm(one),
        isExact: false,
      });
    }
    if (kind === 'twisted-wire' && adhesive !== null) {
      add({ ...named(adhesive), unit: 'g', quantity: 0, isExact: false });
    }
  }
  return withRun([...needs.values()], facts);
}

function named({ materialId, name }: { readonly materialId: string; readonly name: string }) {
  return { materialId, name };
}

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

/** The loop of a through-wire: the run between the eyes is counted once for all that share it. */
function loopMm({ anchor: { eyeInsideMm, wireDiameterMm } }: AnchorFacts): number {
  return eyeInsideMm === null || wireDiameterMm === null ? 0 : Math.PI * (eyeInsideMm + wireDiameterMm);
}

/** Adds one run through the body to each wire that runs through. */
function withRun(needs: readonly BillNeed[], { anchors, body }: ModelFacts): readonly BillNeed[] {
  const run = body === null ? 0 : body.tailMm - body.noseMm;
  const through = new Set(
    anchors.filter(({ anchor }) => anchor.kind === 'through-wire').map(({ anchor }) => anchor.wire?.materialId),
  );
  return needs.map((need) => (through.has(need.materialId) ? { ...need, quantity: need.quantity + run } : need));
}
