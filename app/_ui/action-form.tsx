'use client';

import { unstable_rethrow } from 'next/navigation';
import type { FormEvent, ReactNode } from 'react';
import { createContext, use, useActionState, useEffect, useId, useRef, useState, useTransition } from 'react';
import type { FormAction, FormState } from './form-state';
import { IDLE_FORM } from './form-state';

interface FormContextValue {
  readonly state: FormState;
  readonly isPending: boolean;
  /** Makes the ids of this form's fields unlike those of any other form on the page. */
  readonly formId: string;
  /** Takes the marks off the fields, when rows were moved and the marks would stand at others. */
  readonly dropMarks: () => void;
}

const FormContext = createContext<FormContextValue>({
  state: IDLE_FORM,
  isPending: false,
  formId: 'form',
  dropMarks: () => {},
});

/** What the form around this component last answered. */
export function useActionForm(): FormContextValue {
  return use(FormContext);
}

export interface ActionFormProps {
  readonly action: FormAction;
  readonly children: ReactNode;
  readonly className?: string;
  /** Empties the fields when the action was done: for forms that add one more of something. */
  readonly clearsWhenDone?: boolean;
  /** Called after the action was done, for a dialog that closes itself. */
  readonly onDone?: () => void;
}

const NO_ANSWER: FormState = {
  status: 'refused',
  message: 'The server did not answer, so this may not be saved. What you typed is still here: try again.',
  fieldErrors: {},
  values: {},
};

/**
 * A form whose server action answers with a FormState: shows what was wrong, keeps everything that was typed, also
 * when the server cannot be reached, and puts the focus on the first field that needs a hand. Works without scripts
 * as well: the page then comes back whole with its answer.
 */
export function ActionForm({ action, children, className, clearsWhenDone = false, onDone }: ActionFormProps) {
  const [pageState, pageAction] = useActionState(action, IDLE_FORM);
  const [ownState, setOwnState] = useState<FormState | null>(null);
  const [areMarksDropped, setMarksDropped] = useState(false);
  const [isPending, startSending] = useTransition();
  const form = useRef<HTMLFormElement>(null);
  const formId = useId();
  const state = ownState ?? pageState;

  useEffect(() => {
    if (state.status === 'done') {
      if (clearsWhenDone) form.current?.reset();
      onDone?.();
    }
    if (state.status === 'refused') {
      const wrong = form.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
      (wrong ?? form.current?.querySelector<HTMLElement>('[data-form-answer]'))?.focus();
    }
  }, [state, clearsWhenDone, onDone]);

  // Sent by hand, because React empties the fields of a form after its action, also when it was refused.
  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const submitter = event.nativeEvent instanceof SubmitEvent ? event.nativeEvent.submitter : null;
    const data = new FormData(event.currentTarget, submitter);
    startSending(async () => {
      const answer = await answerOf(action, data);
      setMarksDropped(false);
      setOwnState(answer);
    });
  }

  const context = {
    state: areMarksDropped ? IDLE_FORM : state,
    isPending,
    formId,
    dropMarks: () => setMarksDropped(true),
  };
  return (
    <FormContext value={context}>
      <form ref={form} action={pageAction} onSubmit={submit} noValidate className={className ?? 'grid gap-5'}>
        {children}
        <FormAnswer state={state} />
      </form>
    </FormContext>
  );
}

async function answerOf(action: FormAction, data: FormData): Promise<FormState> {
  try {
    return await action(IDLE_FORM, data);
  } catch (error) {
    // Going to another page is thrown, too, and is no fault.
    unstable_rethrow(error);
    return NO_ANSWER;
  }
}

function FormAnswer({ state }: { readonly state: FormState }) {
  return (
    <div role="status" aria-live="polite">
      {state.status === 'refused' && (
        <p data-form-answer tabIndex={-1} className="border-l-4 border-accent bg-accent-soft px-4 py-3 font-medium">
          {state.message}
        </p>
      )}
      {state.status === 'done' && (
        <div className="border-l-4 border-ink bg-well px-4 py-3 font-medium">
          <p>
            <span aria-hidden="true">✓ </span>
            {state.message}
          </p>
          {state.secret !== undefined && (
            <code className="mt-2 block bg-sheet p-3 break-all select-all">{state.secret}</code>
          )}
        </div>
      )}
    </div>
  );
}
