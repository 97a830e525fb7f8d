import { QuarantineButton } from '@/app/_bench/quarantine-button';
import { StatusMark } from '@/app/_ui/status-mark';
import { pieceText } from '@/lib/batch/batch-words';
import {
  type Acceptance,
  type AcceptancePull,
  acceptance,
  type HoldReason,
  type MixVerdict,
} from '@/lib/pulltest/acceptance';
import { heldMixIds, heldPieces, type PieceJoint } from '@/lib/pulltest/held-pieces';
import type { JudgedPull } from '@/lib/pulltest/judge-pulls';
import { percentText, pullsText } from '@/lib/pulltest/pull-words';
import { forceText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { db } from '@/prisma/client';
import { findMixPieces } from '@/prisma/data/batch-mixes';
import { findBatchHead } from '@/prisma/data/batches';
import type { PullSeries } from '@/prisma/data/pull-series';

export interface AcceptanceVerdictProps {
  readonly series: PullSeries;
  readonly judged: readonly JudgedPull[];
  readonly units: UnitChoice;
}

/** Whether each mix of a batch is accepted on its own pulls, and what a held one means for its very pieces. */
export async function AcceptanceVerdict({ series, judged, units }: AcceptanceVerdictProps) {
  const { demandN, content, confidence } = series.plan.goal;
  if (demandN === null) return null;
  const result = acceptance({
    pulls: acceptancePulls(judged),
    mixIds: series.mixes.map(({ id }) => id),
    demandN,
    certainty: { content, confidence },
    known: null,
  });
  const database = await db();
  const head = series.batchId === null ? null : await findBatchHead(database, series.batchId);
  const batchMixes = await findMixPieces(
    database,
    series.mixes.flatMap(({ batchMixId }) => batchMixId ?? []),
  );
  const joints = series.mixes.flatMap(({ id, batchMixId }): PieceJoint[] =>
    (batchMixes.get(batchMixId ?? '')?.pieces ?? []).map((piece) => ({ piece, anchorId: '', mixId: id })),
  );
  const held = heldPieces(joints, heldMixIds(result));
  return (
    <div className="grid max-w-3xl gap-4">
      <p className="border-l-4 border-ink bg-well px-4 py-3 text-lg font-medium">
        {result.isAccepted
          ? `Accepted: with ${percentText(confidence)} confidence at least ${percentText(content)} of the joints of every mix hold ${forceText(demandN, units.forceUnit)}.`
          : `Hold ${pieceText(held.map(({ piece }) => piece))}: not every mix has shown that it holds ${forceText(demandN, units.forceUnit)}.`}
      </p>
      <ul className="grid gap-3">
        {result.mixes.map((verdict) => {
          const mix = series.mixes.find(({ id }) => id === verdict.mixId);
          const own = held.filter((piece) => piece.joints.some(({ mixId }) => mixId === verdict.mixId));
          return (
            <li
              key={verdict.mixId}
              className="flex flex-wrap items-center justify-between gap-3 border-b border-line pb-3"
            >
              <div>
                <p className="font-bold">
                  <StatusMark status={verdict.verdict === 'accept' ? 'done' : 'held'}>
                    Mix {mix?.name}: {verdict.verdict === 'accept' ? 'accept' : 'hold'}
                  </StatusMark>
                </p>
                <p>{verdictText(verdict, units)}</p>
                {own.length > 0 && <p>It went into {pieceText(own.map(({ piece }) => piece))}.</p>}
              </div>
              {verdict.verdict === 'hold' && head !== null && mix?.batchMixId != null && (
                <QuarantineButton
                  batch={{ batchId: head.id, number: head.number, seenSeq: head.lastSeq }}
                  mixId={mix.batchMixId}
                  mixNumber={Number(mix.name)}
                />
              )}
            </li>
          );
        })}
      </ul>
      <p className="text-sm text-ink-soft">{scatterText(result)}</p>
    </div>
  );
}

function acceptancePulls(judged: readonly JudgedPull[]): AcceptancePull[] {
  return judged.flatMap(({ record: { mixId }, use }): AcceptancePull[] => {
    if (use.kind === 'out') return [];
    if (use.kind === 'fell-out') return [{ mixId, loadN: 0, isLowerBound: false }];
    return [{ mixId, loadN: use.loadN, isLowerBound: use.kind === 'at-least' }];
  });
}

function verdictText(verdict: MixVerdict, units: UnitChoice): string {
  const lower = verdict.lowerN === null ? '' : ` Lower value ${forceText(verdict.lowerN, units.forceUnit)}.`;
  if (verdict.verdict === 'accept') return `${pullsText(verdict.pulls)}.${lower}`;
  const share =
    verdict.proofShare === null ? '' : ` They show it for ${percentText(verdict.proofShare)} of its joints.`;
  return `${pullsText(verdict.pulls)}. ${REASONS[verdict.reason]}${lower}${share}`;
}

const REASONS: { readonly [R in HoldReason]: string } = {
  'not-tested': 'Nothing of it was pulled.',
  'fell-out': 'A joint came out by hand.',
  'below-demand': 'A joint failed below what is asked.',
  'lower-value-short': 'All held what is asked, but they scatter so that one joint in twenty may not.',
  'no-scatter-known': 'One pull of each mix does not tell how they scatter. Pull a second one.',
  'bounds-only': 'No joint failed, and these are too few to tell of the others.',
  'not-determined': 'Too many pulls stopped early to tell.',
};

function scatterText({ scatter }: Acceptance): string {
  if (scatter === null) return 'How joints of a mix scatter is not known yet.';
  return `Joints of one mix scatter by ${percentText(Math.expm1(scatter.logSd))}, from ${scatter.freedom} degrees of freedom.`;
}
