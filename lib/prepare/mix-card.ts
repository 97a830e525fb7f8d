import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { potLife } from '@/lib/cure/pot-life';
import type { MixUse } from '@/lib/mixing/arrangement';
import { doses, type Scale } from '@/lib/mixing/doses';
import { commonTolerance, massRatio } from '@/lib/mixing/mass-ratio';
import { type MixPlan, planMixes } from '@/lib/mixing/mix-plan';
import {
  type CardMix,
  type CardObstacle,
  CUP_LOSS_G,
  type OperationCard,
  type PrepareChoices,
  USABLE_SHARE,
} from '@/lib/prepare/preparation';

/** Most in one cup where the sheet does not say. Chosen: above it cups have been seen to overheat. */
const COMMON_MOST_G = 200;

type CardPart = Pick<OperationCard, 'aPerB' | 'tolerance' | 'mixes' | 'obstacle'>;

/**
 * The cups of one glue-up or coat with what is weighed into each: planned with the lower value of the pot life at each
 * cup's own mass, and with both readings of the scale off by a step.
 */
export function mixCard(
  sheet: AdhesiveSheet,
  uses: readonly MixUse[],
  choices: PrepareChoices,
  secondsPerUse: number,
): CardPart {
  const ratio = massRatio(sheet);
  const isTwoPart = sheet.ratio !== undefined || sheet.potLife.length > 0;
  if (isTwoPart && !ratio.ok) return blocked(ratio.code);
  const aPerB = ratio.ok ? ratio.aPerB : null;
  const tolerance = aPerB === null ? null : commonTolerance(aPerB);
  const scale: Scale = { stepG: choices.scaleStepG, errorG: choices.scaleStepG };
  const mostG = sheet.maxMassG ?? COMMON_MOST_G;
  const dosesFor = (neededG: number) => doses(neededG, aPerB, tolerance ?? 1, scale, mostG);
  const life = (massG: number) => potLife(sheet, massG, choices.temperatureC);
  const first = isTwoPart ? life(1) : null;
  if (first !== null && !first.ok) return blocked(first.code);
  const hasNoAnchors = uses.every((use) => use.anchorId === null);
  const plan = planMixes(
    uses,
    hasNoAnchors ? 'traceable' : choices.arrangement,
    {
      secondsPerUse,
      people: choices.people,
      stirSeconds: isTwoPart ? choices.stirSeconds : 0,
      usableShare: USABLE_SHARE,
    },
    {
      weighedG: (neededG) => {
        const dosed = dosesFor(neededG);
        return dosed.ok ? dosed.massG : neededG > mostG ? neededG : null;
      },
      potLifeMinutes: (massG) => {
        if (!isTwoPart) return Number.POSITIVE_INFINITY;
        const own = life(massG);
        return own.ok ? own.lowerMinutes : 0;
      },
      mostG,
      lossG: CUP_LOSS_G,
    },
  );
  if (!plan.ok) return blocked(obstacleOf(plan), aPerB, tolerance);
  const mixes = plan.mixes.map((mix, index): CardMix => {
    const dosed = dosesFor(mix.neededG);
    if (!dosed.ok) throw new RangeError('mixCard planned a cup that cannot be weighed');
    return {
      number: index + 1,
      partAG: dosed.partAG,
      partBG: dosed.partBG,
      massG: dosed.massG,
      ratioError: dosed.ratioError,
      potLifeMinutes: Number.isFinite(mix.potLifeMinutes) ? mix.potLifeMinutes : null,
      busyMinutes: mix.busyMinutes,
      uses: mix.uses.map(({ piece, anchorId }) => ({ piece, anchorId })),
    };
  });
  return { aPerB, tolerance, mixes, obstacle: null };
}

function blocked(obstacle: CardObstacle, aPerB: number | null = null, tolerance: number | null = null): CardPart {
  return { aPerB, tolerance, mixes: [], obstacle };
}

function obstacleOf(plan: Extract<MixPlan, { ok: false }>): CardObstacle {
  return plan.isWholePiece ? 'piece-too-slow' : plan.code;
}
