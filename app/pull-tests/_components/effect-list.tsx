import Link from 'next/link';
import type { CalibrationEffect, MovedInUse } from '@/app/_server/calibration-effect';
import { type Column, Table } from '@/app/_ui/table';
import { FindingChanges } from '@/app/models/_components/finding-changes';
import { changeText, percentText } from '@/lib/pulltest/pull-words';
import type { BondBelief } from '@/lib/strength/bond-belief';
import { forceText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface EffectListProps {
  readonly effect: CalibrationEffect;
  readonly units: UnitChoice;
}

/** What a calibration changes: the bond, the findings of models and open batches, and the figures of their anchors. */
export function EffectList({ effect, units }: EffectListProps) {
  const { before, after, isUsable, models, batches, moved } = effect;
  return (
    <div className="grid gap-6">
      {isUsable ? (
        <p>
          Strength of the bond, of the shear strength of the wood: {beliefText(before)} before, {beliefText(after)} with
          this.
        </p>
      ) : (
        <p className="border-l-4 border-accent bg-accent-soft px-4 py-3">
          Stock holds no strength figures of this wood or glue, so the rules cannot use these pulls yet. Enter the
          figures, and they count.
        </p>
      )}
      <div className="grid gap-2">
        <h3 className="font-bold">Models judged otherwise</h3>
        {models.length === 0 ? (
          <p className="text-ink-soft">None.</p>
        ) : (
          models.map(({ model, changes }) => (
            <div key={model.revisionId}>
              <p>
                <Link
                  href={`/models/${model.modelId}`}
                  prefetch={false}
                  className="font-semibold underline underline-offset-4"
                >
                  {model.modelName}
                </Link>
                , revision {model.revisionLetter}
              </p>
              <FindingChanges changes={changes} units={units} />
            </div>
          ))
        )}
      </div>
      <div className="grid gap-2">
        <h3 className="font-bold">Open batches judged otherwise</h3>
        {batches.length === 0 ? (
          <p className="text-ink-soft">None.</p>
        ) : (
          batches.map(({ batchId, number, model, changes }) => (
            <div key={batchId}>
              <p>
                <Link
                  href={`/batches/${batchId}`}
                  prefetch={false}
                  className="font-semibold underline underline-offset-4"
                >
                  Batch {number}
                </Link>
                , {model.modelName}, revision {model.revisionLetter}
              </p>
              <FindingChanges changes={changes} units={units} />
            </div>
          ))
        )}
      </div>
      {moved.length > 0 && (
        <div className="grid gap-2">
          <h3 className="font-bold">Lower values that move</h3>
          <Table caption="Lower values that move" columns={columns(units)} rows={moved} rowKey={({ key }) => key} />
        </div>
      )}
    </div>
  );
}

function columns(units: UnitChoice): readonly Column<MovedInUse>[] {
  const load = (valueN: number | null) => (valueN === null ? 'not known' : forceText(valueN, units.forceUnit));
  return [
    { id: 'anchor', title: 'Anchor', cell: ({ modelName, anchorName }) => `${modelName}, ${anchorName}` },
    { id: 'before', title: 'Before', isNumber: true, cell: ({ before }) => load(before.lowerN) },
    {
      id: 'after',
      title: 'With this',
      isNumber: true,
      cell: ({ before, after }) =>
        `${load(after.lowerN)}${before.lowerN === null || after.lowerN === null ? '' : changeText(after.lowerN / before.lowerN - 1)}`,
    },
    {
      id: 'verdict',
      title: 'Carries what is asked',
      cell: ({ before, after, isFlipped }) =>
        isFlipped ? `${WORDS[before.outcome]} → ${WORDS[after.outcome]}` : WORDS[after.outcome],
    },
  ];
}

const WORDS = { holds: 'yes', short: 'no', 'not-judged': 'not judged' } as const;

function beliefText(belief: BondBelief | null): string {
  if (belief === null) return 'nothing known';
  return `${percentText(belief.median)} in the middle, ${percentText(belief.lower)} as the lower value`;
}
