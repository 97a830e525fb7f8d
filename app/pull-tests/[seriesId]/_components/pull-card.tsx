import { momentInput } from '@/app/_server/wall-moment';
import { ActionForm } from '@/app/_ui/action-form';
import { RadioField } from '@/app/_ui/choice-field';
import { DialogButton } from '@/app/_ui/dialog-button';
import { TextField } from '@/app/_ui/field';
import { Card } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import { countsAsText, loadText, marksText } from '@/app/pull-tests/_components/pull-use-text';
import { EXCLUSION_REASONS, exclusionText } from '@/lib/pulltest/exclusion';
import type { JudgedPull } from '@/lib/pulltest/judge-pulls';
import { modeText } from '@/lib/pulltest/pull-mode';
import { forceIn } from '@/lib/units/convert';
import { dateClockText } from '@/lib/units/format-instant';
import { plainDecimals } from '@/lib/units/quantity-input';
import type { PullSeries, SeriesPull } from '@/prisma/data/pull-series';
import type { Scale } from '@/prisma/data/scales';
import type { ShopSettings } from '@/prisma/data/shop';
import { correctPullAction, countAgainAction, excludePullAction } from '../actions';
import { PhotoChoice } from './photo-choice';
import { ReadingFields } from './reading-fields';

export interface PullCardProps {
  readonly series: PullSeries;
  readonly judged: JudgedPull;
  readonly pull: SeriesPull | null;
  readonly scales: readonly Scale[];
  readonly shop: ShopSettings;
}

/** A pull that is written down: what it says, and what may be done about it. */
export function PullCard({ series, judged, pull, scales, shop }: PullCardProps) {
  if (pull === null) return null;
  const marks = marksText(judged);
  return (
    <Card className="grid gap-3">
      <p className="text-2xl font-bold">
        {loadText(judged, shop.forceUnit)}, {modeText(pull.mode).toLowerCase()}
      </p>
      <p>
        {capital(countsAsText(judged))}.{marks === '' ? '' : ` ${capital(marks)}.`}
      </p>
      <p className="text-sm text-ink-soft">
        Pulled {dateClockText(pull.pulledAt, shop.timeZone)}
        {pull.cureHours === null
          ? ''
          : `, after ${plainDecimals(Math.round(pull.cureHours))} h at the sheet's temperature`}
        {pull.scale === null ? '' : `, on ${pull.scale.name}`}
        {pull.angleDeg === 0 ? '' : `, at ${plainDecimals(pull.angleDeg)}°`}.{pull.note === '' ? '' : ` ${pull.note}`}
      </p>
      {pull.photoName !== null && (
        // biome-ignore lint/performance/noImgElement: a photo of this shop, served as it was taken
        <img
          // Another photo has another name, so that an old one is not shown for it.
          src={`/api/v1/pulls/${pull.id}/photo?of=${pull.photoName.slice(0, 8)}`}
          alt={`The specimen after the pull: ${modeText(pull.mode).toLowerCase()}`}
          className="max-h-96 max-w-full justify-self-start rounded-sheet border border-line"
        />
      )}
      {!series.isClosed && <PhotoChoice pullId={pull.id} hasPhoto={pull.photoName !== null} />}
      {!series.isClosed && (
        <div className="flex flex-wrap gap-3">
          <DialogButton label="Correct" title="Correct this pull">
            <ActionForm action={correctPullAction.bind(null, series.id, pull.id)}>
              <ReadingFields
                scales={scales}
                unit={shop.forceUnit}
                start={{
                  load: pull.loadN === null ? '' : plainDecimals(forceIn(shop.forceUnit, pull.loadN)),
                  mode: pull.mode,
                  isLowerBound: pull.isLowerBound,
                  leftDamage: pull.leftDamage,
                  angleDeg: plainDecimals(pull.angleDeg),
                  scaleId: pull.scaleId ?? '',
                  pulledAt: momentInput(pull.pulledAt, shop.timeZone),
                  note: pull.note,
                }}
              />
              <TextField name="reason" label="Why it is corrected" maxLength={500} />
              <div>
                <SubmitButton>Correct it</SubmitButton>
              </div>
            </ActionForm>
          </DialogButton>
          {pull.exclusion === null ? (
            <DialogButton label="Leave out" title="Leave this pull out">
              <ActionForm action={excludePullAction.bind(null, series.id, pull.id)}>
                <p className="text-ink-soft">
                  Only what can be seen without looking at the load is a reason. The reading stays, and the analysis
                  shows both, with it and without.
                </p>
                <RadioField
                  name="reason"
                  legend="What happened"
                  options={EXCLUSION_REASONS.map((value) => ({ value, label: exclusionText(value) }))}
                />
                <TextField name="note" label="Note" isOptional maxLength={500} />
                <div>
                  <SubmitButton>Leave it out</SubmitButton>
                </div>
              </ActionForm>
            </DialogButton>
          ) : (
            <ActionForm action={countAgainAction.bind(null, series.id, pull.id)}>
              <SubmitButton weight="plain">Count it again</SubmitButton>
            </ActionForm>
          )}
        </div>
      )}
    </Card>
  );
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
