/** What a form's server action gives back. Free of server and schema code, so that the browser may read it. */
export type FormState =
  | { readonly status: 'idle' }
  | {
      readonly status: 'refused';
      /** One sentence for the whole form. */
      readonly message: string;
      /** What is wrong with each field, by the field's name (`anchors.2.xMm`). */
      readonly fieldErrors: Readonly<Record<string, string>>;
      /** What was typed, by the field's name, so that nothing is lost without scripts. */
      readonly values: Readonly<Record<string, string>>;
    }
  | {
      readonly status: 'done';
      readonly message: string;
      /** A text that is shown this once, to be copied. */
      readonly secret?: string;
    };

export const IDLE_FORM: FormState = { status: 'idle' };

/** A server action as a form takes it. */
export type FormAction = (previous: FormState, data: FormData) => Promise<FormState>;
