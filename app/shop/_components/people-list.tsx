import Link from 'next/link';
import { ActionForm } from '@/app/_ui/action-form';
import { EmptyState } from '@/app/_ui/empty-state';
import { TextField } from '@/app/_ui/field';
import { StatusMark } from '@/app/_ui/status-mark';
import { SubmitButton } from '@/app/_ui/submit-button';
import { Table } from '@/app/_ui/table';
import type { BenchStretch, Person } from '@/prisma/data/people';
import { addPersonAction } from '../actions';
import { groupedByHours, hoursText } from './hours-text';

interface PersonRow extends Person {
  readonly benchHours: readonly BenchStretch[];
}

/** Everybody with their bench hours, and a field for one more. */
export function PeopleList({ people }: { readonly people: readonly PersonRow[] }) {
  return (
    <div className="grid gap-5">
      {people.length === 0 ? (
        <EmptyState title="Nobody is in the list yet">
          <p>
            Add everybody who mixes, sets joints or sands. Then choose at the top of each phone or screen who stands at
            it, and what is logged there carries that name.
          </p>
        </EmptyState>
      ) : (
        <Table
          caption="People and their bench hours"
          rows={people}
          rowKey={(person) => person.id}
          columns={[
            {
              id: 'name',
              title: 'Name',
              cell: (person) => (
                <Link
                  href={`/shop/people/${person.id}`}
                  prefetch={false}
                  className="inline-flex min-h-touch items-center underline underline-offset-4"
                >
                  {person.name}
                </Link>
              ),
            },
            {
              id: 'hours',
              title: 'Bench hours',
              cell: (person) => hoursText(groupedByHours(person.benchHours)) || 'not set',
            },
            {
              id: 'here',
              title: 'Works here',
              cell: (person) =>
                person.isActive ? (
                  <StatusMark status="ready">Yes</StatusMark>
                ) : (
                  <StatusMark status="archived">Left</StatusMark>
                ),
            },
          ]}
        />
      )}
      <ActionForm action={addPersonAction} className="grid max-w-md gap-3" clearsWhenDone>
        <TextField name="name" label="Add somebody" hint="The name that stands in the log." maxLength={60} />
        <div>
          <SubmitButton weight="plain" pendingText="Adding…">
            Add to the shop
          </SubmitButton>
        </div>
      </ActionForm>
    </div>
  );
}
