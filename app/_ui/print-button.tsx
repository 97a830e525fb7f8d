'use client';

import { buttonClass } from './button-class';

/** Opens the browser's print dialog. The page prints black on white, without what is only of use on a screen. */
export function PrintButton({ label }: { readonly label: string }) {
  return (
    <button type="button" className={`${buttonClass('primary')} print:hidden`} onClick={() => window.print()}>
      {label}
    </button>
  );
}
