/** What is wrong with a plan. Minutes are the problem's; `taskIds` are those that clash. */
export type Violation =
  | { readonly kind: 'unknown-task'; readonly taskIds: readonly string[] }
  | { readonly kind: 'placed-twice'; readonly taskIds: readonly string[] }
  | { readonly kind: 'missing'; readonly taskIds: readonly string[] }
  | { readonly kind: 'too-early'; readonly taskIds: readonly string[]; readonly notBeforeMinute: number }
  | { readonly kind: 'beyond-horizon'; readonly taskIds: readonly string[] }
  | { readonly kind: 'moved-what-is-fixed'; readonly taskIds: readonly string[] }
  | { readonly kind: 'wrong-person'; readonly taskIds: readonly string[]; readonly personId: string | null }
  | { readonly kind: 'outside-bench-hours'; readonly taskIds: readonly string[]; readonly atMinute: number }
  | { readonly kind: 'put-down'; readonly taskIds: readonly string[] }
  | {
      readonly kind: 'wrong-length';
      readonly taskIds: readonly string[];
      readonly neededMinutes: number;
      readonly plannedMinutes: number;
    }
  | {
      readonly kind: 'person-twice';
      readonly taskIds: readonly string[];
      readonly personId: string;
      readonly atMinute: number;
    }
  | { readonly kind: 'set-up-missing'; readonly taskIds: readonly string[] }
  | {
      readonly kind: 'over-capacity';
      readonly taskIds: readonly string[];
      readonly resourceId: string;
      readonly atMinute: number;
      readonly held: number;
      readonly capacity: number;
    }
  | {
      readonly kind: 'least-lag';
      readonly taskIds: readonly string[];
      readonly linkId: string;
      /** The earliest minute allowed; null: the cure is not reached within its table. */
      readonly notBeforeMinute: number | null;
      readonly plannedMinute: number;
    }
  | {
      readonly kind: 'greatest-lag';
      readonly taskIds: readonly string[];
      readonly linkId: string;
      readonly notAfterMinute: number;
      readonly plannedMinute: number;
    }
  | { readonly kind: 'hold-without-end'; readonly taskIds: readonly string[]; readonly resourceId: string }
  | { readonly kind: 'wrong-remedy'; readonly taskIds: readonly string[]; readonly linkId: string };
