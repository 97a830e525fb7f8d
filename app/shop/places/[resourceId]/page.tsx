import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ActionForm } from '@/app/_ui/action-form';
import { dayText } from '@/app/_ui/day-text';
import { DialogButton } from '@/app/_ui/dialog-button';
import { TextField } from '@/app/_ui/field';
import { Card, Page, Section } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import { db } from '@/prisma/client';
import { findResource } from '@/prisma/data/resources';
import { PlaceFields } from '../_components/place-fields';
import {
  addResourceChangeAction,
  removeResourceAction,
  removeResourceChangeAction,
  saveResourceAction,
} from '../actions';

export const metadata: Metadata = { title: 'Places' };

export default async function PlacePage({ params }: { readonly params: Promise<{ resourceId: string }> }) {
  const { resourceId } = await params;
  const resource = await findResource(await db(), resourceId);
  if (resource === null) notFound();
  return (
    <Page title={resource.name} up={{ href: '/shop/places', label: 'Places' }}>
      <Section title="What it is">
        <Card className="max-w-3xl">
          <ActionForm action={saveResourceAction.bind(null, resourceId)}>
            <PlaceFields resource={resource} />
            <div>
              <SubmitButton>Save</SubmitButton>
            </div>
          </ActionForm>
        </Card>
      </Section>
      <Section title="Days with more or fewer places" lead="Broken, lent, or one more hired.">
        {resource.changes.length > 0 && (
          <ul className="grid max-w-3xl gap-2">
            {resource.changes.map(({ id, fromOn, toOn, capacity, reason }) => (
              <li key={id} className="flex flex-wrap items-center justify-between gap-3">
                <span>
                  {fromOn === toOn ? dayText(fromOn) : `${dayText(fromOn)} to ${dayText(toOn)}`}: {capacity}{' '}
                  {capacity === 1 ? 'place' : 'places'}
                  {reason !== '' && `, ${reason}`}
                </span>
                <ActionForm action={removeResourceChangeAction} className="flex gap-3">
                  <input type="hidden" name="changeId" value={id} />
                  <SubmitButton weight="quiet">Take back</SubmitButton>
                </ActionForm>
              </li>
            ))}
          </ul>
        )}
        <ActionForm
          action={addResourceChangeAction.bind(null, resourceId)}
          className="grid max-w-3xl gap-3"
          clearsWhenDone
        >
          <div className="grid gap-4 sm:grid-cols-4">
            <TextField name="fromOn" type="date" label="First day" />
            <TextField name="toOn" type="date" label="Last day" />
            <TextField name="capacity" label="Places then" inputMode="numeric" maxLength={4} />
            <TextField name="reason" label="Reason" maxLength={120} isOptional />
          </div>
          <div>
            <SubmitButton weight="plain">Add these days</SubmitButton>
          </div>
        </ActionForm>
      </Section>
      <Section title="Gone for good">
        <div>
          <DialogButton label="Remove it" title={`Remove ${resource.name}?`} weight="remove">
            <p>Steps that took places here then take none. What was made stays as it is.</p>
            <ActionForm action={removeResourceAction.bind(null, resourceId)}>
              <div>
                <SubmitButton weight="remove" pendingText="Removing…">
                  Remove it
                </SubmitButton>
              </div>
            </ActionForm>
          </DialogButton>
        </div>
      </Section>
    </Page>
  );
}
