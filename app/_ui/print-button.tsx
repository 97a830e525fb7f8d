'use client';

import { buttonClass } from './button-class';

/** Prints the page. */
export function PrintButton() {
  return (
    <button type="button" className={`${buttonClass('plain')} print:hidden`} onClick={() => window.print()}>
      Print
    </button>
  );
}
