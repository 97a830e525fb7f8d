import type { Metadata } from 'next';
import Link from 'next/link';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentPeople, currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { DialogButton } from '@/app/_ui/dialog-button';
import { EmptyState } from '@/app/_ui/empty-state';
import { TextField } from '@/app/_ui/field';
import { Card, Page } from '@/app/_ui/page';
import { StatusMark } from '@/app/_ui/status-mark';
import { SubmitButton } from '@/app/_ui/submit-button';
import { dateText } from '@/lib/units/format-instant';
import { db } from '@/prisma/client';
import { type CalibrationRow, listCalibrations } from '@/prisma/data/calibrations';
import { calibrationWarningText } from '../_components/calibration-words';
import { retireCalibrationAction } from '../actions';

export const metadata: Metadata = { title: 'Calibrations' };

/** What the shop's strength rests on, and what it rested on before. */
export default async function CalibrationsPage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { word } = await readListQuery(searchParams);
  const [database, shop, people] = [await db(), await currentShop(), await currentPeople()];
  const calibrations = await listCalibrations(database);
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const accepted = calibrations.find(({ id }) => id === word('accepted'));
  return (
    <Page
      title="Calibrations"
      lead="The analyses that the strength of your models rests on, one for each wood, glue and wire. Earlier ones are kept."
      up={{ href: '/pull-tests', label: 'Pull tests' }}
    >
      {accepted !== undefined && (
        <p role="status" className="border-l-4 border-ink bg-well px-4 py-3 font-medium">
          <span aria-hidden="true">✓ </span>Accepted. Models of this wood, glue and wire are judged by it from now on.
        </p>
      )}
      {calibrations.length === 0 && (
        <EmptyState title="None accepted yet">
          <p>
            Pull a series, look at what it says, and accept it. Until then the rules go by what is generally believed.
          </p>
        </EmptyState>
      )}
      {calibrations.map((calibration) => (
        <CalibrationCard
          key={calibration.id}
          calibration={calibration}
          zone={shop.timeZone}
          personName={names.get(calibration.personId ?? '') ?? null}
        />
      ))}
    </Page>
  );
}

interface CalibrationCardProps {
  readonly calibration: CalibrationRow;
  readonly zone: string;
  readonly personName: string | null;
}

function CalibrationCard({ calibration, zone, personName }: CalibrationCardProps) {
  const { id, body, version, status, acceptedAt, endedAt, endedReason, note } = calibration;
  const counted = body.pulls.filter(({ excludedReason }) => excludedReason === null).length;
  return (
    <Card className="grid gap-3">
      <h2 className="text-xl font-bold">
        {body.conditionName}, version {version}
      </h2>
      <p>
        {status === 'accepted' ? (
          <StatusMark status="ready">In force</StatusMark>
        ) : (
          <StatusMark status="archived">{status === 'superseded' ? 'Superseded' : 'Retired'}</StatusMark>
        )}
      </p>
      <p className="text-ink-soft">
        Accepted {dateText(acceptedAt, zone)}
        {personName === null ? '' : ` by ${personName}`}, from {counted} pulls that count of {body.pulls.length}.
        {endedAt === null ? '' : ` Ended ${dateText(endedAt, zone)}: ${endedReason ?? ''}`}
        {note === '' ? '' : ` ${note}`}
      </p>
      <ul className="grid list-disc gap-1 pl-5 text-sm">
        {[...body.conclusion.slice(0, 2), ...body.warnings.map(calibrationWarningText)].map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <p className="flex flex-wrap gap-x-4">
        {body.seriesIds.map((seriesId) => (
          <Link
            key={seriesId}
            href={`/pull-tests/${seriesId}`}
            prefetch={false}
            className="inline-flex min-h-touch items-center underline underline-offset-4"
          >
            The pulls
          </Link>
        ))}
      </p>
      {status === 'accepted' && (
        <div>
          <DialogButton label="Retire" title="Take it out of use" weight="quiet">
            <ActionForm action={retireCalibrationAction.bind(null, id)}>
              <p className="text-ink-soft">
                Models of this wood, glue and wire then go by what is generally believed. It stays here as it was.
              </p>
              <TextField name="reason" label="Why" maxLength={500} />
              <div>
                <SubmitButton weight="remove">Take it out of use</SubmitButton>
              </div>
            </ActionForm>
          </DialogButton>
        </div>
      )}
    </Card>
  );
}
