/** What POST /api/v1/batches/:id/events answers. Free of schema code, so that the browser may read it. */
export type RecordEventAnswer =
  | {
      readonly ok: true;
      readonly seq: number;
      /** The key was known: the action had been taken in before, and counted once. */
      readonly isRepeat: boolean;
      /** What the maker should know although the action was taken in, in whole sentences. */
      readonly warnings: readonly string[];
    }
  | {
      readonly ok: false;
      readonly code: string;
      /** One or two sentences: what is wrong and what to do. */
      readonly message: string;
      /** More about it, each a sentence. */
      readonly details: readonly string[];
    };
