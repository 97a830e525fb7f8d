'use client';

import type { ReactNode } from 'react';
import { useCallback, useState } from 'react';
import type { ButtonWeight } from './button-class';
import { buttonClass } from './button-class';
import { Dialog } from './dialog';

export interface DialogButtonProps {
  readonly label: ReactNode;
  readonly title: ReactNode;
  readonly weight?: ButtonWeight;
  readonly children: ReactNode;
}

/** A button that opens its own dialog. What is inside may come from the server. */
export function DialogButton({ label, title, weight = 'plain', children }: DialogButtonProps) {
  const [isOpen, setOpen] = useState(false);
  const close = useCallback(() => setOpen(false), []);
  return (
    <>
      <button type="button" className={buttonClass(weight)} onClick={() => setOpen(true)}>
        {label}
      </button>
      <Dialog isOpen={isOpen} onClose={close} title={title}>
        {children}
      </Dialog>
    </>
  );
}
