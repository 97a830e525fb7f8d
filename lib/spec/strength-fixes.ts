import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { drillFor } from '@/lib/spec/deepest-hole';
import { runThrough } from '@/lib/spec/fix-kinds';
import { lighterLine } from '@/lib/spec/lighter-line';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { mm, newtons, wireMm } from '@/lib/spec/quantity-words';
import type { OfferedWire } from '@/lib/spec/spec-context';
import type { AnchorPatch, FixWay, SpecFix } from '@/lib/spec/spec-fix';
import type { TwistedWireAnchor } from '@/lib/strength/anchor-design';
import { type RankedRemedy, type Remedy, whatWouldHold } from '@/lib/strength/what-would-hold';
import { withWire } from '@/lib/strength/wire-choice';
import type { Words } from '@/lib/units/quantity';

/** What would make an anchor carry its line's load with the factor, as changes to the spec. Candidates, to be tried. */
export function strengthFixes(facts: AnchorFacts, model: ModelFacts): readonly SpecFix[] {
  const { design, strength } = facts.of;
  if (design === null || strength?.atAngle.kind !== 'estimate') return [];
  switch (design.kind) {
    case 'twisted-wire':
      return gluedFixes(facts, design, strength.atAngle.lowerN, model);
    case 'screw-eye':
      return lighterLine(strength.atAngle.lowerN, model);
    case 'through-wire':
      return [...closing(facts), ...thickerThrough(facts, model), ...lighterLine(strength.atAngle.lowerN, model)];
  }
}

function gluedFixes(facts: AnchorFacts, design: TwistedWireAnchor, lowerN: number, model: ModelFacts) {
  const { body, context, demand } = model;
  const { place } = facts.of;
  if (demand === null) return [];
  const { requiredFactor, incrementMm, woodBelowMm, strength } = context.settings;
  const remedies = whatWouldHold(
    {
      design,
      neededN: requiredFactor * demand.governing.loadN,
      incrementMm,
      wires: context.wires,
      woods: context.woods,
      lighterLine: null,
      place: body === null || place === null ? null : { body, at: place },
      woodBelowMm,
    },
    strength,
  );
  const fixes = remedies.flatMap((ranked): readonly SpecFix[] => gluedFix(ranked, facts, design, model));
  // A wood too soft for any anchor is not helped by more glue or less line.
  const isSoft = design.wood.gravity12.value < context.settings.throughWireBelowGravity;
  return isSoft
    ? fixes.filter(({ way }) => way === 'through' || way === 'wood')
    : [...fixes, ...lighterLine(lowerN, model)];
}

function gluedFix(ranked: RankedRemedy, facts: AnchorFacts, design: TwistedWireAnchor, model: ModelFacts) {
  const { remedy } = ranked;
  const { anchorId } = facts.anchor;
  const carries = newtons(ranked.lowerN);
  if (remedy.kind === 'through-wire') return runThrough(facts).map((fix) => ({ ...fix, carries }));
  if (remedy.kind === 'other-wood') {
    const wood = model.context.woods.find(({ id }) => id === remedy.woodId)?.material;
    if (wood === undefined) return [];
    const words: Words = [`Make the body of ${wood.name}.`];
    return [
      {
        way: 'wood' as const,
        words,
        changes: [{ kind: 'model' as const, set: { wood } }],
        size: ranked.change,
        carries,
      },
    ];
  }
  const made = patchOf(remedy, facts, design, model);
  if (made === null) return [];
  return [
    {
      way: made.way,
      words: made.words,
      changes: [{ kind: 'anchor' as const, anchorId, set: made.set }],
      size: ranked.change,
      carries,
    },
  ];
}

interface MadePatch {
  readonly way: FixWay;
  readonly words: Words;
  readonly set: AnchorPatch;
}

function patchOf(
  remedy: Exclude<Remedy, { readonly kind: 'through-wire' | 'other-wood' }>,
  { anchor }: AnchorFacts,
  design: TwistedWireAnchor,
  { context }: ModelFacts,
): MadePatch | null {
  const depth = (embedmentMm: number) => ({
    embedmentMm,
    drillDepthMm: drillFor(embedmentMm, anchor.drillDepthMm),
  });
  switch (remedy.kind) {
    case 'close-the-eye':
      return { way: 'close-eye', words: ['Close the eye with a twist.'], set: { isEyeClosed: true } };
    case 'deeper':
      return { way: 'deeper', words: ['Glue it ', mm(remedy.embedmentMm), ' deep.'], set: depth(remedy.embedmentMm) };
    case 'square':
      return {
        way: 'square',
        words: ['Drill square to the body, and glue it ', mm(remedy.embedmentMm), ' deep.'],
        set: { slantDeg: 0, embedmentMm: remedy.embedmentMm, drillDepthMm: remedy.embedmentMm },
      };
    case 'thicker-wire':
      return wirePatch(remedy.wireId, design, context.wires, null);
    case 'thicker-and-deeper':
      return wirePatch(remedy.wireId, design, context.wires, depth(remedy.embedmentMm));
    case 'lighter-line':
      return null;
  }
}

function wirePatch(
  wireId: string,
  design: TwistedWireAnchor,
  wires: readonly OfferedWire[],
  depth: { readonly embedmentMm: number; readonly drillDepthMm: number } | null,
): MadePatch | null {
  const choice = wires.find(({ id }) => id === wireId);
  if (choice === undefined) return null;
  const { bitDiameterMm, twistPitchMm, wire } = withWire(design, choice);
  const { diameterMm } = wire;
  return {
    way: depth === null ? 'wire' : 'wire-and-depth',
    words: [
      `Use ${choice.name} (`,
      wireMm(diameterMm),
      ') in a ',
      wireMm(bitDiameterMm),
      ' hole',
      ...(depth === null ? ['.'] : [', ', mm(depth.embedmentMm), ' deep.']),
    ],
    set: { wire: choice.material, wireDiameterMm: diameterMm, bitDiameterMm, twistPitchMm, ...depth },
  };
}

function closing({ anchor }: AnchorFacts): readonly SpecFix[] {
  if (anchor.isEyeClosed !== false) return [];
  const { anchorId } = anchor;
  return [
    {
      way: 'close-eye',
      words: ['Close the eye with a twist.'],
      changes: [{ kind: 'anchor', anchorId, set: { isEyeClosed: true } }],
      size: 0.5,
      carries: null,
    },
  ];
}

/** Each thicker or harder wire on offer for a wire that runs through; the engine tries which of them hold. */
function thickerThrough({ anchor, of: { wire } }: AnchorFacts, { context }: ModelFacts): readonly SpecFix[] {
  if (wire === null) return [];
  const { anchorId } = anchor;
  return context.wires
    .filter(
      (choice) =>
        choice.wire.diameterMm >= wire.diameterMm &&
        choice.wire.leastTensileMpa * choice.wire.diameterMm ** 2 > wire.leastTensileMpa * wire.diameterMm ** 2,
    )
    .map((choice) => ({
      way: 'wire' as const,
      words: [`Use ${choice.name} (`, wireMm(choice.wire.diameterMm), ').'],
      changes: [
        {
          kind: 'anchor' as const,
          anchorId,
          set: { wire: choice.material, wireDiameterMm: choice.wire.diameterMm, isEyeClosed: true },
        },
      ],
      size: 4 + 10 * (choice.wire.diameterMm / wire.diameterMm - 1),
      carries: null,
    }));
}
