'use client';

import { useEffect } from 'react';
import { ActionForm } from '@/app/_ui/action-form';
import { buttonClass } from '@/app/_ui/button-class';
import type { FormAction } from '@/app/_ui/form-state';
import { SubmitButton } from '@/app/_ui/submit-button';
import type { SpecModel } from '@/lib/spec/spec-model';
import type { Instant } from '@/lib/units/instant';
import { triedSpec } from './trial';

export interface SaveBarProps {
  readonly saved: SpecModel;
  readonly tried: SpecModel;
  readonly count: number;
  readonly seenAt: Instant | null;
  readonly action: FormAction;
  readonly onReset: () => void;
}

/** What was changed and not saved yet stays in sight, and is asked about before the page is left. */
export function SaveBar({ saved, tried, count, seenAt, action, onReset }: SaveBarProps) {
  useEffect(() => {
    if (count === 0 || seenAt === null) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [count, seenAt]);
  return (
    <div
      className={
        count === 0 ? '' : 'sticky bottom-24 z-10 rounded-sheet border-2 border-ink bg-sheet p-3 shadow-lg sm:bottom-4'
      }
    >
      <ActionForm action={action} className="grid gap-3">
        {seenAt !== null && (
          <input type="hidden" name="tried" value={JSON.stringify(triedSpec(saved, tried, seenAt))} />
        )}
        {count > 0 && (
          <div className="flex flex-wrap items-center justify-between gap-3">
            <p className="font-semibold">
              {count === 1 ? '1 change tried' : `${count} changes tried`}
              {seenAt === null ? ': this revision is frozen. Make the next one to keep them.' : ', not saved yet'}
            </p>
            <div className="flex flex-wrap gap-2">
              <button type="button" className={buttonClass('plain')} onClick={onReset}>
                Back to what is saved
              </button>
              {seenAt !== null && <SubmitButton>Save these changes</SubmitButton>}
            </div>
          </div>
        )}
      </ActionForm>
    </div>
  );
}
