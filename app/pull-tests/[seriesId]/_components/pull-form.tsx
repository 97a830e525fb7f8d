import { ActionForm } from '@/app/_ui/action-form';
import { CheckField } from '@/app/_ui/choice-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import type { ForceUnit } from '@/lib/units/unit-choice';
import type { Scale } from '@/prisma/data/scales';
import { recordPullAction } from '../actions';
import { ReadingFields } from './reading-fields';

export interface PullFormProps {
  readonly seriesId: string;
  readonly specimenId: string;
  readonly pullKey: string;
  readonly scales: readonly Scale[];
  /** The scale of the pull before. */
  readonly lastScaleId: string | null;
  readonly unit: ForceUnit;
  readonly isEarly: boolean;
  readonly wasPulled: boolean;
}

/** The form at the scale. */
export function PullForm(props: PullFormProps) {
  const { seriesId, specimenId, pullKey, scales, lastScaleId, unit, isEarly, wasPulled } = props;
  return (
    <ActionForm action={recordPullAction.bind(null, seriesId, specimenId)} className="grid max-w-3xl gap-6">
      <input type="hidden" name="key" value={pullKey} />
      <ReadingFields
        scales={scales}
        unit={unit}
        start={{ scaleId: lastScaleId ?? (scales.length === 1 ? (scales[0]?.id ?? '') : '') }}
      />
      {isEarly && (
        <CheckField
          name="acceptsEarly"
          label="Pull it although it is not sure to be cured"
          hint="It is marked as early and does not count."
        />
      )}
      {wasPulled && (
        <CheckField
          name="acceptsAgain"
          label="It gave way before and was pulled again"
          hint="A specimen that only held may be pulled again without this tick."
        />
      )}
      <div className="sticky bottom-24 z-10 md:static">
        <SubmitButton pendingText="Writing down…">Write it down</SubmitButton>
      </div>
    </ActionForm>
  );
}
