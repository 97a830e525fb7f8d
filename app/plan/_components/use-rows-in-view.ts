'use client';

import { type RefObject, startTransition, useEffect, useState } from 'react';

/** Rows are drawn this far beyond what is in view, px: what is scrolled in is there already. */
const MARGIN_PX = 300;
/** What is taken to be in view before the browser has said, px. */
const FIRST_PX = 800;

/** The rows that a scrolled box shows: from `first` up to `end`. `tops` are their upper edges and the last lower one. */
export function useRowsInView(box: RefObject<HTMLElement | null>, tops: readonly number[]) {
  const [seen, setSeen] = useState({ fromPx: 0, toPx: FIRST_PX });
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    // In passing: rows that come into view are drawn between frames, never in the way of one.
    const look = () =>
      startTransition(() => {
        setSeen((before) => {
          const next = seenOf(element.scrollTop, element.clientHeight);
          return next.fromPx === before.fromPx && next.toPx === before.toPx ? before : next;
        });
      });
    look();
    element.addEventListener('scroll', look, { passive: true });
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => {
      element.removeEventListener('scroll', look);
      observer.disconnect();
    };
  }, [box]);
  const count = tops.length - 1;
  const first = tops.findIndex((_, index) => (tops[index + 1] ?? 0) > seen.fromPx);
  const end = tops.findIndex((top) => top > seen.toPx);
  return { first: Math.max(0, first), end: end < 0 ? count : Math.min(count, end) };
}

/** In whole margins, so that most scrolling changes nothing. */
function seenOf(scrollTop: number, height: number) {
  const step = MARGIN_PX / 2;
  const first = Math.floor(scrollTop / step) * step;
  return { fromPx: first - MARGIN_PX, toPx: first + step + height + MARGIN_PX };
}
