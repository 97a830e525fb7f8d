import type { BatchClock } from '@/lib/batch/batch-state';
import type { ClockRelease, KnownBatch } from '@/lib/batch/evaluation';
import type { PlanIndex } from '@/lib/batch/plan-index';
import { planIndex } from '@/lib/batch/plan-index';
import { byInstant } from '@/lib/batch/release-band';
import type { AdhesiveSheet, Milestone } from '@/lib/cure/adhesive-sheet';
import { MILESTONES } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';

/**
 * The milestones a sheet gives, by its hours; of equal hours in the order of MILESTONES. `recoat-by` is among them.
 */
export function statedMilestones(sheet: AdhesiveSheet): readonly Milestone[] {
  const hours = sheet.milestoneHours;
  return MILESTONES.filter((milestone) => hours[milestone] !== undefined).sort(
    (a, b) => (hours[a] ?? 0) - (hours[b] ?? 0),
  );
}

/** When what a milestone changes is sure: an opening at the latest, `recoat-by` at the earliest. */
export function sureAt({ milestone, band }: Pick<ClockRelease, 'milestone' | 'band'>): Instant | null {
  return milestone === 'recoat-by' ? band.earliestAt : band.latestAt;
}

/**
 * For each clock that an open operation still waits on, or that ends the route, the first milestone of its sheet that
 * is not reached for sure at `nowAt`; soonest first. `recoat-from` and `recoat-by` only while
 * a coat waits for that window.
 */
export function nextReleases(batch: KnownBatch, nowAt: Instant): readonly ClockRelease[] {
  const index = planIndex(batch.plan);
  const found: ClockRelease[] = [];
  for (const clock of batch.state.clocks) {
    const interest = interestIn(batch, index, clock);
    if (interest === 'none') continue;
    let next: ClockRelease | null = null;
    for (const milestone of statedMilestones(clock.sheet)) {
      if ((milestone === 'recoat-from' || milestone === 'recoat-by') && interest !== 'window') continue;
      const release = batch.releases.release(clock, milestone);
      if (!release.ok) continue;
      const candidate = { clock, milestone, band: release.band };
      const at = sureAt(candidate);
      if (at !== null && at <= nowAt) continue;
      if (next === null || byInstant(at, sureAt(next)) < 0) next = candidate;
      // Openings come in the order of their hours, but a window may close before an earlier opening is sure.
      if (milestone !== 'recoat-by' && interest !== 'window') break;
    }
    if (next !== null) found.push(next);
  }
  return found.sort((a, b) => byInstant(sureAt(a), sureAt(b)));
}

/** Whether anything on the route still looks at this clock: nothing, its openings, or its recoat window as well. */
function interestIn(batch: KnownBatch, index: PlanIndex, clock: BatchClock): 'none' | 'openings' | 'window' {
  const own = index.indexOf.get(clock.operationId);
  const operation = own === undefined ? undefined : index.operations[own];
  if (own === undefined || operation === undefined) return 'none';
  if (operation.neededBy.length === 0) return 'openings';
  let interest: 'none' | 'openings' = 'none';
  for (const number of clock.pieces) {
    const piece = batch.state.pieces[number - 1];
    for (const dependent of operation.neededBy) {
      if (piece === undefined || piece.operations[dependent]?.doneAt !== null) continue;
      interest = 'openings';
      const recoats = index.operations[dependent]?.needs.some((need) => need.index === own && need.wait === 'recoat');
      if (recoats === true && piece.operations[own]?.remediedAt === null) return 'window';
    }
  }
  return interest;
}
