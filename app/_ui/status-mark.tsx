import type { ReactNode } from 'react';

/** What a thing is at. Each has its own shape and its own word; the accent only underlines what needs a hand. */
export type Status =
  | 'ready'
  | 'running'
  | 'waiting'
  | 'closing'
  | 'late'
  | 'done'
  | 'held'
  | 'scrapped'
  | 'draft'
  | 'frozen'
  | 'archived'
  | 'expired'
  | 'holds'
  | 'short'
  | 'waived'
  | 'not-judged';

interface Mark {
  readonly word: string;
  readonly needsHand: boolean;
  readonly shape: ReactNode;
}

const line = { fill: 'none', stroke: 'currentColor', strokeWidth: 2 } as const;

const MARKS: { readonly [S in Status]: Mark } = {
  ready: { word: 'Ready', needsHand: false, shape: <circle cx="8" cy="8" r="7" fill="currentColor" /> },
  running: {
    word: 'Running',
    needsHand: false,
    shape: (
      <>
        <circle cx="8" cy="8" r="6.5" {...line} />
        <path d="M8 8V1.5A6.5 6.5 0 0 1 14.5 8Z" fill="currentColor" />
      </>
    ),
  },
  waiting: { word: 'Waiting', needsHand: false, shape: <circle cx="8" cy="8" r="6.5" {...line} /> },
  closing: { word: 'Closing', needsHand: true, shape: <path d="M1 2h14L8 15Z" fill="currentColor" /> },
  late: {
    word: 'Late',
    needsHand: true,
    shape: (
      <>
        <path d="M8 .8 15.2 8 8 15.2.8 8Z" {...line} />
        <path d="M8 4v5M8 10.4v1.8" {...line} />
      </>
    ),
  },
  done: { word: 'Done', needsHand: false, shape: <path d="M1.5 8.5 6 13 14.5 3" {...line} strokeWidth={3} /> },
  held: {
    word: 'Held',
    needsHand: false,
    shape: (
      <>
        <path d="M4 1.5v13M12 1.5v13" {...line} strokeWidth={3} />
      </>
    ),
  },
  scrapped: { word: 'Scrapped', needsHand: false, shape: <path d="M2 2l12 12M14 2 2 14" {...line} /> },
  draft: {
    word: 'Draft',
    needsHand: false,
    shape: <rect x="2" y="2" width="12" height="12" {...line} strokeDasharray="3 2" />,
  },
  frozen: {
    word: 'Frozen',
    needsHand: false,
    shape: <rect x="1.5" y="1.5" width="13" height="13" fill="currentColor" />,
  },
  archived: {
    word: 'Archived',
    needsHand: false,
    shape: <path d="M1.5 2h13v4h-13ZM3 6v8h10V6M6 9h4" {...line} strokeWidth={1.6} />,
  },
  expired: {
    word: 'Expired',
    needsHand: true,
    shape: (
      <>
        <circle cx="8" cy="8" r="6.5" {...line} />
        <path d="M3.5 12.5l9-9" {...line} />
      </>
    ),
  },
  holds: {
    word: 'Holds',
    needsHand: false,
    shape: (
      <>
        <rect x="1.5" y="1.5" width="13" height="13" rx="3" {...line} />
        <path d="M4.5 8.2 7 10.8 11.6 5" {...line} />
      </>
    ),
  },
  short: {
    word: 'Short',
    needsHand: true,
    shape: <path d="M2 1h12v6H2ZM2 10h5v5H2Z" fill="currentColor" />,
  },
  waived: {
    word: 'Waived',
    needsHand: false,
    shape: (
      <>
        <path d="M2 1h12v6H2Z" {...line} />
        <path d="M2 13h12" {...line} />
      </>
    ),
  },
  'not-judged': {
    word: 'Not judged',
    needsHand: false,
    shape: <rect x="1.5" y="1.5" width="13" height="13" rx="3" {...line} strokeDasharray="2 2.4" />,
  },
};

export interface StatusMarkProps {
  readonly status: Status;
  /** Another word in place of the usual one; the shape stays. */
  readonly children?: ReactNode;
}

/** A state as shape and word. */
export function StatusMark({ status, children }: StatusMarkProps) {
  const mark = MARKS[status];
  return (
    <span className={`inline-flex items-baseline gap-2 font-semibold ${mark.needsHand ? 'text-accent' : 'text-ink'}`}>
      <svg viewBox="0 0 16 16" aria-hidden="true" className="size-[0.8em] shrink-0 translate-y-[0.04em]">
        {mark.shape}
      </svg>
      <span>{children ?? mark.word}</span>
    </span>
  );
}
