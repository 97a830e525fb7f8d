import type { Body } from '@/lib/geometry/body';
import { coverProfile } from '@/lib/geometry/cover';
import { type HolePlace, shankPath } from '@/lib/geometry/shank-path';
import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import type { TwistedWireAnchor } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import { leastEmbedment } from '@/lib/strength/least-embedment';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import { leastWire, type WireChoice, withWire } from '@/lib/strength/wire-choice';

/** One change, or two, that would make an anchor hold. */
export type Remedy =
  | { readonly kind: 'close-the-eye' }
  | { readonly kind: 'deeper'; readonly embedmentMm: number }
  /** Drill square to the body instead of aslant. */
  | { readonly kind: 'square'; readonly embedmentMm: number }
  | { readonly kind: 'thicker-wire'; readonly wireId: string; readonly bitDiameterMm: number }
  | {
      readonly kind: 'thicker-and-deeper';
      readonly wireId: string;
      readonly bitDiameterMm: number;
      readonly embedmentMm: number;
    }
  | { readonly kind: 'lighter-line'; readonly labelN: number }
  | { readonly kind: 'through-wire' }
  | { readonly kind: 'other-wood'; readonly woodId: string };

/** A remedy with what the anchor then carries, and how much of a change it is. */
export interface RankedRemedy {
  readonly remedy: Remedy;
  /** Lower value at the load's angle after it. */
  readonly lowerN: number;
  /** Chosen scale: a sixteenth deeper is 1. */
  readonly change: number;
}

export interface WoodChoice {
  readonly id: string;
  readonly wood: ResolvedWood;
}

export interface RemedyQuestion {
  readonly design: TwistedWireAnchor;
  readonly neededN: number;
  readonly incrementMm: number;
  readonly wires: readonly WireChoice[];
  readonly woods: readonly WoodChoice[];
  /** Heaviest line it holds as it is, N of label; null: none or not asked. */
  readonly lighterLine: { readonly labelN: number; readonly fromN: number; readonly lowerN: number } | null;
  /** Where the hole is; null: a test board. */
  readonly place: { readonly body: Body; readonly at: HolePlace } | null;
  /** Wood to be left under the hole. */
  readonly woodBelowMm: number;
}

/** Chosen weights of change on the scale of sixteenths of depth; see `RankedRemedy.change`. */
const CHANGE = {
  closeEye: 0.5,
  square: 2,
  wire: 4,
  wireRelative: 10,
  line: 8,
  lineRelative: 10,
  through: 14,
  wood: 20,
} as const;

/** Everything of one change, and wire with depth, that would make an anchor hold, the least change first. */
export function whatWouldHold(question: RemedyQuestion, settings: StrengthSettings): readonly RankedRemedy[] {
  const found = [
    ...closing(question, settings),
    ...deepening(question, settings),
    ...squaring(question, settings),
    ...thickening(question, settings),
    ...lightening(question),
    ...runningThrough(question, settings),
    ...otherWoods(question, settings),
  ];
  return found.sort((a, b) => a.change - b.change);
}

/** Lower value of a design at its angle; 0 where nothing can be said. */
function carries(design: TwistedWireAnchor, settings: StrengthSettings): number {
  const { atAngle } = anchorStrength(design, settings);
  return atAngle.kind === 'estimate' ? atAngle.lowerN : 0;
}

function closing({ design, neededN }: RemedyQuestion, settings: StrengthSettings): readonly RankedRemedy[] {
  if (design.eye.isClosed) return [];
  const lowerN = carries({ ...design, eye: { ...design.eye, isClosed: true } }, settings);
  return lowerN >= neededN ? [{ remedy: { kind: 'close-the-eye' }, lowerN, change: CHANGE.closeEye }] : [];
}

function deepest({ place, woodBelowMm }: RemedyQuestion, at: HolePlace | null): number {
  if (place === null || at === null) return Number.POSITIVE_INFINITY;
  const path = shankPath(place.body, at);
  return path.ok ? path.path.throughMm - woodBelowMm : 0;
}

function deepening(question: RemedyQuestion, settings: StrengthSettings): readonly RankedRemedy[] {
  const { design, neededN, incrementMm, place } = question;
  const answer = leastEmbedment(
    { design: atFullReach(question, design), neededN, incrementMm, greatestMm: deepest(question, place?.at ?? null) },
    settings,
  );
  if (!answer.ok || answer.embedmentMm <= design.embedmentMm) return [];
  const change = Math.max(1, (answer.embedmentMm - design.embedmentMm) / incrementMm);
  return [{ remedy: { kind: 'deeper', embedmentMm: answer.embedmentMm }, lowerN: answer.lowerN, change }];
}

/** The design with cover known as deep as its hole could go. */
function atFullReach({ place }: RemedyQuestion, design: TwistedWireAnchor): TwistedWireAnchor {
  const path = place === null ? null : shankPath(place.body, place.at);
  if (place === null || path === null || !path.ok) return design;
  return { ...design, cover: coverProfile(place.body, path.path, REACH_MM) };
}

/** As deep as any estimate goes. */
const REACH_MM = 38.1;

function squaring(question: RemedyQuestion, settings: StrengthSettings): readonly RankedRemedy[] {
  const { design, neededN, incrementMm, place } = question;
  if (place === null || place.at.slantDeg === 0) return [];
  const at = { ...place.at, slantDeg: 0 };
  const path = shankPath(place.body, at);
  if (!path.ok) return [];
  const squared = { ...design, cover: coverProfile(place.body, path.path, REACH_MM) };
  const greatestMm = deepest(question, at);
  const answer = leastEmbedment({ design: squared, neededN, incrementMm, greatestMm }, settings);
  if (!answer.ok) return [];
  const steps = Math.max(0, (answer.embedmentMm - design.embedmentMm) / incrementMm);
  const roomMm = Math.floor(greatestMm / incrementMm + 1e-9) * incrementMm;
  const embedmentMm = Math.max(answer.embedmentMm, Math.min(design.embedmentMm, roomMm));
  const lowerN = carries({ ...squared, embedmentMm }, settings);
  if (lowerN < neededN) return [];
  return [{ remedy: { kind: 'square', embedmentMm }, lowerN, change: CHANGE.square + steps }];
}

function thickening(question: RemedyQuestion, settings: StrengthSettings): readonly RankedRemedy[] {
  const { design, wires, neededN, incrementMm, place } = question;
  const others = wires.filter(
    ({ wire }) =>
      wire.diameterMm > design.wire.diameterMm ||
      (wire.diameterMm === design.wire.diameterMm && wire.leastTensileMpa > design.wire.leastTensileMpa),
  );
  const relative = (choice: WireChoice) =>
    CHANGE.wire + CHANGE.wireRelative * (choice.wire.diameterMm / design.wire.diameterMm - 1);
  const alone = leastWire(design, others, neededN, settings);
  if (alone !== null) {
    const changed = withWire(design, alone);
    const remedy = { kind: 'thicker-wire', wireId: alone.id, bitDiameterMm: changed.bitDiameterMm } as const;
    return [{ remedy, lowerN: carries(changed, settings), change: relative(alone) }];
  }
  for (const choice of [...others].sort((a, b) => a.wire.diameterMm - b.wire.diameterMm)) {
    const changed = atFullReach(question, withWire(design, choice));
    const greatestMm = deepest(question, place?.at ?? null);
    const answer = leastEmbedment({ design: changed, neededN, incrementMm, greatestMm }, settings);
    if (!answer.ok) continue;
    const { bitDiameterMm } = changed;
    const { embedmentMm, lowerN } = answer;
    const remedy = { kind: 'thicker-and-deeper', wireId: choice.id, bitDiameterMm, embedmentMm } as const;
    const steps = Math.max(0, (embedmentMm - design.embedmentMm) / incrementMm);
    return [{ remedy, lowerN, change: relative(choice) + steps }];
  }
  return [];
}

function lightening({ lighterLine }: RemedyQuestion): readonly RankedRemedy[] {
  if (lighterLine === null) return [];
  const { labelN, fromN, lowerN } = lighterLine;
  return [
    {
      remedy: { kind: 'lighter-line', labelN },
      lowerN,
      change: CHANGE.line + CHANGE.lineRelative * (1 - labelN / fromN),
    },
  ];
}

function runningThrough({ design, neededN }: RemedyQuestion, settings: StrengthSettings): readonly RankedRemedy[] {
  const { wire, eye, wood, cover, loadAngleDeg } = design;
  const { atAngle } = anchorStrength(
    { kind: 'through-wire', wood, wire, twistPitchMm: null, eye: { ...eye, isClosed: true }, cover, loadAngleDeg },
    settings,
  );
  if (atAngle.kind !== 'estimate' || atAngle.lowerN < neededN) return [];
  return [{ remedy: { kind: 'through-wire' }, lowerN: atAngle.lowerN, change: CHANGE.through }];
}

function otherWoods({ design, neededN, woods }: RemedyQuestion, settings: StrengthSettings): readonly RankedRemedy[] {
  return woods.flatMap(({ id, wood }) => {
    const lowerN = carries({ ...design, wood }, settings);
    if (lowerN < neededN) return [];
    const heavier = Math.abs(wood.densityKgM3 / design.wood.densityKgM3 - 1);
    return [{ remedy: { kind: 'other-wood', woodId: id } as const, lowerN, change: CHANGE.wood + 10 * heavier }];
  });
}
