import { ActionForm } from '@/app/_ui/action-form';
import { DialogButton } from '@/app/_ui/dialog-button';
import { TextAreaField } from '@/app/_ui/field';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import type { Finding } from '@/lib/spec/finding';
import { grantWaiverAction, withdrawWaiverAction } from '../waiver-actions';
import { ruleTitle } from './rule-title';

export interface WaiveButtonProps {
  readonly finding: Finding;
  readonly revisionId: string;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  /** Who stands at this device. */
  readonly personId: string | null;
}

/** Accepts a short in writing, or takes that back. Nothing for what is not short. */
export function WaiveButton({ finding, revisionId, people, personId }: WaiveButtonProps) {
  const { ruleId, subject, verdict, waiver } = finding;
  if (waiver !== null) {
    return (
      <ActionForm action={withdrawWaiverAction.bind(null, waiver.waiverId)} className="grid">
        <SubmitButton weight="quiet" pendingText="Taking back…">
          Take the waiver back
        </SubmitButton>
      </ActionForm>
    );
  }
  if (verdict !== 'short') return null;
  return (
    <DialogButton label="Waive" title={`${subject.name}: ${ruleTitle(ruleId)}`} weight="quiet">
      <ActionForm action={grantWaiverAction.bind(null, revisionId)}>
        <input type="hidden" name="ruleId" value={ruleId} />
        <input type="hidden" name="subject" value={subject.key} />
        <p>
          Accept this short for this revision. The waiver lapses with the next revision, and batches show it. What
          people rely on is never waived: strength here is an estimate, and pull tests decide.
        </p>
        <TextAreaField name="reason" label="Why it is accepted" maxLength={500} />
        <SelectField
          name="personId"
          label="Who accepts it"
          emptyLabel="choose"
          options={people.map(({ id, name }) => ({ value: id, label: name }))}
          defaultValue={personId ?? ''}
        />
        {people.length === 0 && <p>Enter the people of the shop first, under Shop.</p>}
        <div>
          <SubmitButton>Waive it</SubmitButton>
        </div>
      </ActionForm>
    </DialogButton>
  );
}
