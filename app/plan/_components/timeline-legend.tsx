'use client';

import type { ReactNode } from 'react';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import type { RowKind } from './timeline-rows';
import { fillOf } from './visit-bar';

/** What the shapes of the timeline stand for. */
export function TimelineLegend({ kind }: { readonly kind: RowKind }) {
  return (
    <ul className="flex flex-wrap gap-x-5 gap-y-1 text-sm text-ink-soft">
      <VisitSign text="work" kind="work" />
      <VisitSign text="glue-up" kind="glue" />
      <VisitSign text="coat" kind="coat" />
      {kind !== 'people' && (
        <Sign text={kind === 'batches' ? 'cure, up to its release' : 'place held by a cure'}>
          <path d="M2 9H23" strokeWidth="8" strokeDasharray="2 4" className="stroke-chart-a" />
          <path d="M24 3V15" strokeWidth="2" className="stroke-chart-a" />
        </Sign>
      )}
      {kind === 'batches' && (
        <>
          <Sign text="recoat window closes">
            <path d="M3 10V15H23V4" strokeWidth="1.5" className="fill-none stroke-line-strong" />
          </Sign>
          <Sign text="ready">
            <path d="M13 2l6 7 -6 7 -6 -7z" strokeWidth="2" className="fill-sheet stroke-ink" />
          </Sign>
        </>
      )}
      <Sign text="pinned">
        <circle cx="13" cy="9" r="5" className="fill-ink" />
      </Sign>
      <Sign text="in conflict">
        <path d="M6 15l7 -12 7 12z" className="fill-accent" />
      </Sign>
      <Sign text="somebody is at the bench">
        <rect x="2" y="2" width="22" height="14" className="fill-ground stroke-line" />
      </Sign>
    </ul>
  );
}

function VisitSign({ text, kind }: { readonly text: string; readonly kind: PlannedVisit['kind'] }) {
  return (
    <Sign text={text}>
      <rect
        x="2"
        y="3"
        width="22"
        height="12"
        rx="2"
        strokeWidth="1.5"
        className={`${fillOf({ kind, state: 'open' })} stroke-ink`}
      />
    </Sign>
  );
}

function Sign({ text, children }: { readonly text: string; readonly children: ReactNode }) {
  return (
    <li className="flex items-center gap-2">
      <svg width="26" height="18" viewBox="0 0 26 18" aria-hidden="true">
        {children}
      </svg>
      {text}
    </li>
  );
}
