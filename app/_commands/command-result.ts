/** An honest no: why nothing was saved, and beside which field of the form to say it. */
export interface Refusal<Code extends string> {
  readonly ok: false;
  readonly code: Code;
  readonly message: string;
  readonly field?: string;
}

export interface Done {
  readonly ok: true;
}

export const DONE: Done = { ok: true };
