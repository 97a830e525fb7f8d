/** What pulls at an anchor: the line, a hook under the belly, a hook at the tail. */
export const ANCHOR_ROLES = ['line-tie', 'belly-hanger', 'tail-hanger'] as const;
export type AnchorRole = (typeof ANCHOR_ROLES)[number];

/** How it holds: twisted wire or a screw eye in a hole, or one wire through the whole body. */
export const ANCHOR_KINDS = ['twisted-wire', 'screw-eye', 'through-wire'] as const;
export type AnchorKind = (typeof ANCHOR_KINDS)[number];
