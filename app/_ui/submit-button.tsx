'use client';

import type { ReactNode } from 'react';
import { useFormStatus } from 'react-dom';
import { useActionForm } from './action-form';
import type { ButtonWeight } from './button-class';
import { buttonClass } from './button-class';

export interface SubmitButtonProps {
  readonly children: ReactNode;
  readonly weight?: ButtonWeight;
  /** What the button says while the server works. */
  readonly pendingText?: string;
  readonly name?: string;
  readonly value?: string;
  /** A fuller name for screen readers, when the visible text needs its surroundings. */
  readonly label?: string;
}

/** Sends the form around it; says so while it is on its way, and cannot be pressed twice meanwhile. */
export function SubmitButton(props: SubmitButtonProps) {
  const { children, weight = 'primary', pendingText = 'Saving…', name, value, label } = props;
  const plain = useFormStatus();
  const { isPending } = useActionForm();
  const isBusy = isPending || plain.pending;
  return (
    <button
      type="submit"
      name={name}
      value={value}
      disabled={isBusy}
      aria-label={label}
      className={buttonClass(weight)}
    >
      {isBusy ? pendingText : children}
    </button>
  );
}
