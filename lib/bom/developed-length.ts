import { STEEPEST_TWIST_DEG, twistedPair } from '@/lib/geometry/twisted-pair';

/** A wire to be cut for one anchor, in its parts. The trim is gripped while bending and cut off afterwards. */
export interface DevelopedLength {
  readonly ok: true;
  readonly straightMm: number;
  readonly loopsMm: number;
  readonly tailsMm: number;
  readonly trimMm: number;
  /** All of it: what is cut from the wire. */
  readonly cutMm: number;
  /** Close to the steepest that two strands can lie. */
  readonly isSteep: boolean;
}

export type DevelopedResult =
  | DevelopedLength
  /** Two touching strands cannot be twisted so short; `leastPitchMm` is the limit. */
  | { readonly ok: false; readonly code: 'twist-too-steep'; readonly leastPitchMm: number };

/** An eye bent from one wire, its two ends twisted into a shank. */
export interface TwistedEye {
  readonly wireDiameterMm: number;
  /** Length of one full turn. */
  readonly pitchMm: number;
  readonly shankMm: number;
  readonly eyeInsideMm: number;
  /** How far the wire runs round the eye: 360 for a full ring. */
  readonly loopDeg: number;
  /** Both ends together, left on. */
  readonly tailsMm: number;
  /** Both ends together, cut off. */
  readonly trimMm: number;
}

/** Warned from this pitch on, over the steepest. Chosen, after the reference pack's 1.2 pi d. */
const STEEP_SHARE = 1.2;

/**
 * Wire for a twisted eye: two helices down the shank, the loop along the wire's axis, tails and trim.
 *
 * Throws RangeError for sizes that are not positive, or a tail or trim below 0.
 * Source: helix and circle (derived). 30 mm of shank at 6 mm a turn, wire 0.9, eye 3 inside, 16 of tails: 94.580 mm.
 */
export function twistedEyeLength(eye: TwistedEye): DevelopedResult {
  requireSizes([eye.shankMm, eye.eyeInsideMm, eye.loopDeg], [eye.tailsMm, eye.trimMm]);
  const pair = twistedPair(eye.wireDiameterMm, eye.pitchMm);
  const leastPitchMm = Math.PI * eye.wireDiameterMm;
  if (pair.strandAngleDeg > STEEPEST_TWIST_DEG + 1e-9) return { ok: false, code: 'twist-too-steep', leastPitchMm };
  const loopsMm = loopLength(eye.wireDiameterMm, eye.eyeInsideMm, eye.loopDeg);
  return developed(
    2 * eye.shankMm * pair.takeUp,
    loopsMm,
    eye.tailsMm,
    eye.trimMm,
    eye.pitchMm < STEEP_SHARE * leastPitchMm,
  );
}

/** One wire through the whole body, with an eye at each place where something hangs. */
export interface ThroughWire {
  readonly wireDiameterMm: number;
  /** From the first eye to the last, along the way the wire lies. */
  readonly runMm: number;
  readonly eyes: readonly {
    readonly insideMm: number;
    /** How far the wire runs round it. */
    readonly loopDeg: number;
    /** Turns wound round the standing wire to close it, touching each other. */
    readonly wrapTurns: number;
  }[];
  readonly tailsMm: number;
  readonly trimMm: number;
}

/**
 * Wire for a through-wire: the run, each eye, the wraps that close it, tails and trim. A wrap lies on a circle of twice
 * the wire's diameter and climbs by one diameter a turn.
 *
 * Throws RangeError for sizes that are not positive, or a wrap, tail or trim below 0.
 * Source: helix and circle (derived).
 */
export function throughWireLength({ wireDiameterMm, runMm, eyes, tailsMm, trimMm }: ThroughWire): DevelopedLength {
  requireSizes([wireDiameterMm, runMm, ...eyes.flatMap((eye) => [eye.insideMm, eye.loopDeg])], [tailsMm, trimMm]);
  requireSizes(
    [],
    eyes.map((eye) => eye.wrapTurns),
  );
  const wrapMm = Math.hypot(wireDiameterMm, 2 * Math.PI * wireDiameterMm);
  const loopsMm = eyes.reduce(
    (sum, eye) => sum + loopLength(wireDiameterMm, eye.insideMm, eye.loopDeg) + eye.wrapTurns * wrapMm,
    0,
  );
  return developed(runMm, loopsMm, tailsMm, trimMm, false);
}

function developed(
  straightMm: number,
  loopsMm: number,
  tailsMm: number,
  trimMm: number,
  isSteep: boolean,
): DevelopedLength {
  return { ok: true, straightMm, loopsMm, tailsMm, trimMm, cutMm: straightMm + loopsMm + tailsMm + trimMm, isSteep };
}

function loopLength(wireDiameterMm: number, insideMm: number, loopDeg: number): number {
  return (Math.PI * (insideMm + wireDiameterMm) * loopDeg) / 360;
}

function requireSizes(positive: readonly number[], notNegative: readonly number[]): void {
  if (!positive.every((size) => size > 0 && Number.isFinite(size))) {
    throw new RangeError(`a developed length needs positive sizes, got ${positive.join(', ')}`);
  }
  if (!notNegative.every((size) => size >= 0 && Number.isFinite(size))) {
    throw new RangeError(`a developed length needs ends of 0 or more, got ${notNegative.join(', ')}`);
  }
}
