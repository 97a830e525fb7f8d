'use client';

import type { ReactNode } from 'react';
import { useEffect, useId, useRef } from 'react';
import { buttonClass } from './button-class';

export interface DialogProps {
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly title: ReactNode;
  readonly children: ReactNode;
}

/** A native modal dialog: Esc closes it, the focus stays in it and goes back to where it came from. */
export function Dialog({ isOpen, onClose, title, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();

  useEffect(() => {
    const element = dialog.current;
    if (element === null) return;
    if (isOpen && !element.open) element.showModal();
    if (!isOpen && element.open) element.close();
  }, [isOpen]);

  return (
    <dialog
      ref={dialog}
      aria-labelledby={titleId}
      onClose={onClose}
      className="max-h-[min(92dvh,60rem)] w-[min(94vw,38rem)] rounded-sheet border-2 border-line-strong bg-sheet p-0 text-ink shadow-lg"
    >
      {isOpen && (
        <div className="grid gap-5 p-5 sm:p-6">
          <div className="flex items-start justify-between gap-4">
            <h2 id={titleId} className="text-xl font-bold">
              {title}
            </h2>
            <button
              type="button"
              onClick={onClose}
              aria-label="Close"
              className={`${buttonClass('quiet')} -mt-2 -mr-2`}
            >
              <svg viewBox="0 0 16 16" aria-hidden="true" className="size-4 stroke-current stroke-2">
                <path d="M2 2l12 12M14 2 2 14" />
              </svg>
            </button>
          </div>
          {children}
        </div>
      )}
    </dialog>
  );
}
