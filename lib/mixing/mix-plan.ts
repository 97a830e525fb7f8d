import { type Arrangement, arrange, leastMixes, type MixUse, usesByPiece } from '@/lib/mixing/arrangement';

/** How fast a mix is used up. */
export interface Pace {
  /** For one joint or coat, by one person. */
  readonly secondsPerUse: number;
  /** Applying from the same mix at once. */
  readonly people: number;
  /** From the first contact of the parts to the first joint. */
  readonly stirSeconds: number;
  /** Share of the pot life that the shop plans to use, above 0 to 1. */
  readonly usableShare: number;
}

/** What is known of a cup of this glue, at the temperature of the day. */
export interface Cup {
  /** What is weighed in to have `neededG` to hand, g; null: it cannot be weighed well enough. Never less than the need. */
  readonly weighedG: (neededG: number) => number | null;
  /** The lower value of the pot life of a cup of this mass. */
  readonly potLifeMinutes: (massG: number) => number;
  /** Most in one cup, g. */
  readonly mostG: number;
  /** Lost in the cup and on the stick, g. */
  readonly lossG: number;
}

/** One cup of the plan. */
export interface PlannedMix {
  readonly uses: readonly MixUse[];
  /** For its uses and what stays in the cup. */
  readonly neededG: number;
  readonly massG: number;
  /** Stirring and applying. */
  readonly busyMinutes: number;
  readonly potLifeMinutes: number;
}

export type MixObstacle = 'cannot-weigh' | 'cup-too-heavy' | 'too-slow';

export type MixPlan =
  | { readonly ok: true; readonly mixes: readonly PlannedMix[] }
  /**
   * Not even the smallest cup that the arrangement allows works; `isWholePiece`: a single joint would, but all joints of
   * one piece from one mix do not.
   */
  | { readonly ok: false; readonly code: MixObstacle; readonly isWholePiece: boolean };

/**
 * The fewest mixes in which every use is applied within the shop's share of the pot life. Fewer uses make a smaller cup,
 * which lasts longer: each number of mixes is tried with the cups it really gives, from the fewest upward, so the answer
 * is exact. Nothing to do gives no mixes.
 *
 * Throws RangeError for a pace that is not one.
 * Source: stir + ceil(n / people) x seconds <= share x pot life of the cup (derived); the clock starts at first contact.
 */
export function planMixes(uses: readonly MixUse[], arrangement: Arrangement, pace: Pace, cup: Cup): MixPlan {
  requirePace(pace);
  const pieces = usesByPiece(uses);
  const units = arrangement === 'spread' ? uses.length : pieces.length;
  if (units === 0) return { ok: true, mixes: [] };
  let obstacle: MixObstacle = 'too-slow';
  for (let mixes = firstTried(uses, leastMixes(pieces, arrangement), cup); mixes <= units; mixes++) {
    const planned: PlannedMix[] = [];
    for (const own of arrange(pieces, arrangement, mixes)) {
      const mix = oneMix(own, pace, cup);
      if (typeof mix === 'string') {
        obstacle = mix;
        break;
      }
      planned.push(mix);
    }
    if (planned.length === mixes) return { ok: true, mixes: planned };
  }
  const isWholePiece = arrangement === 'traceable' && uses.every((use) => typeof oneMix([use], pace, cup) !== 'string');
  return { ok: false, code: obstacle, isWholePiece };
}

/**
 * The most uses of `eachG` grams that one mix serves, up to `limit`; 0 where not even one. Every number is tried, since a
 * pot life fitted to several points of a sheet need not fall steadily with the mass.
 * Throws RangeError for a pace that is not one.
 */
export function mostUsesPerMix(eachG: number, limit: number, pace: Pace, cup: Cup): number {
  requirePace(pace);
  let most = 0;
  for (let count = 1; count <= limit; count++) {
    if (typeof cupFor(count, count * eachG, pace, cup) !== 'string') most = count;
  }
  return most;
}

/** Below this many mixes one of them would be too heavy. */
function firstTried(uses: readonly MixUse[], least: number, cup: Cup): number {
  const total = uses.reduce((sum, { massG }) => sum + massG, 0);
  const byMass = Math.ceil(total / Math.max(cup.mostG - cup.lossG, Number.MIN_VALUE) - 1e-9);
  return Math.max(least, Math.min(byMass, uses.length));
}

function oneMix(uses: readonly MixUse[], pace: Pace, cup: Cup): PlannedMix | MixObstacle {
  const netG = uses.reduce((sum, { massG }) => sum + massG, 0);
  const mix = cupFor(uses.length, netG, pace, cup);
  return typeof mix === 'string' ? mix : { uses, ...mix };
}

function cupFor(count: number, netG: number, pace: Pace, cup: Cup): Omit<PlannedMix, 'uses'> | MixObstacle {
  const neededG = netG + cup.lossG;
  const massG = cup.weighedG(neededG);
  if (massG === null) return 'cannot-weigh';
  if (massG > cup.mostG * (1 + 1e-9)) return 'cup-too-heavy';
  const potLifeMinutes = cup.potLifeMinutes(massG);
  const busyMinutes = (pace.stirSeconds + Math.ceil(count / pace.people) * pace.secondsPerUse) / 60;
  if (!(busyMinutes <= pace.usableShare * potLifeMinutes * (1 + 1e-12))) return 'too-slow';
  return { neededG, massG, busyMinutes, potLifeMinutes };
}

function requirePace({ secondsPerUse, people, stirSeconds, usableShare }: Pace): void {
  const isPace = secondsPerUse > 0 && people >= 1 && Number.isInteger(people) && stirSeconds >= 0;
  if (!isPace || !(usableShare > 0 && usableShare <= 1)) {
    throw new RangeError(`planMixes needs a pace, got ${secondsPerUse}, ${people}, ${stirSeconds}, ${usableShare}`);
  }
}
