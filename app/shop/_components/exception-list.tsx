import { ActionForm } from '@/app/_ui/action-form';
import { dayText } from '@/app/_ui/day-text';
import { TextField } from '@/app/_ui/field';
import type { FormAction } from '@/app/_ui/form-state';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { Table } from '@/app/_ui/table';
import type { SHOP_DAY_KINDS } from '@/lib/contracts/bench-hours';
import type { BenchException } from '@/prisma/data/people';
import { removeExceptionAction } from '../actions';
import { spanText } from './hours-text';

export interface ExceptionListProps {
  readonly exceptions: readonly BenchException[];
  /** YYYY-MM-DD in the shop. */
  readonly today: string;
  readonly action: FormAction;
  /** Whether the days are the whole shop's: it can be shut, open within hours only, or open beside everybody's own. */
  readonly isShop?: boolean;
}

/** Days that differ from the usual week, and a form for one more. */
export function ExceptionList({ exceptions, today, action, isShop = false }: ExceptionListProps) {
  return (
    <div className="grid gap-5">
      {exceptions.length === 0 ? (
        <p className="text-ink-soft">None from today on.</p>
      ) : (
        <Table
          caption="Days that differ"
          rows={exceptions}
          rowKey={(exception) => exception.id}
          columns={[
            { id: 'day', title: 'Day', cell: (exception) => dayText(exception.onDate) },
            { id: 'hours', title: 'Hours', cell: hoursOf },
            { id: 'reason', title: 'Reason', cell: (exception) => exception.reason || '–' },
            {
              id: 'remove',
              title: 'Take back',
              cell: (exception) => (
                <ActionForm action={removeExceptionAction} className="grid">
                  <input type="hidden" name="exceptionId" value={exception.id} />
                  <SubmitButton weight="quiet" pendingText="…" label={`Take back ${dayText(exception.onDate)}`}>
                    Take back
                  </SubmitButton>
                </ActionForm>
              ),
            },
          ]}
        />
      )}
      <ActionForm action={action} clearsWhenDone>
        <div className={`grid items-start gap-4 sm:grid-cols-2 ${isShop ? 'lg:grid-cols-5' : 'lg:grid-cols-4'}`}>
          <TextField name="onDate" type="date" label="Day" defaultValue={today} />
          {isShop && <SelectField name="kind" label="The shop is" options={SHOP_DAYS} defaultValue="shut" />}
          <TextField
            name="from"
            type="time"
            label="From"
            hint={isShop ? 'Empty where it is shut all day.' : 'Both times empty: away.'}
            isOptional
          />
          <TextField name="to" type="time" label="To" hint="0:00 is the end of the day." isOptional />
          <TextField name="reason" label="Reason" hint="For the plan and for others." maxLength={120} isOptional />
        </div>
        <div>
          <SubmitButton weight="plain">Add this day</SubmitButton>
        </div>
      </ActionForm>
    </div>
  );
}

const SHOP_DAYS: readonly { readonly value: (typeof SHOP_DAY_KINDS)[number]; readonly label: string }[] = [
  { value: 'shut', label: 'shut all day' },
  { value: 'within', label: 'open only from – to' },
  { value: 'beside', label: 'open for everybody, also from – to' },
];

function hoursOf({ personId, fromMinute, toMinute, opensHours }: BenchException): string {
  if (fromMinute === null || toMinute === null) return personId === null ? 'shut all day' : 'away';
  const span = spanText(fromMinute, toMinute);
  if (personId !== null) return span;
  return opensHours ? `${span} for everybody, beside their own hours` : `nobody outside ${span}`;
}
