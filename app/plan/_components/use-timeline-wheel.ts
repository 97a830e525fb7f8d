'use client';

import { type RefObject, useEffect, useRef } from 'react';

/** Turned so far with Ctrl, the wheel zooms by a step. Chosen: one notch of a mouse. */
const NOTCH_PX = 90;

interface Wheel {
  readonly onPan: (px: number) => void;
  readonly onZoom: (by: 1 | -1) => void;
}

/** Moves sideways and zooms by the wheel: up and down the browser scrolls by itself. */
export function useTimelineWheel(box: RefObject<HTMLElement | null>, wheel: Wheel): void {
  const newest = useRef(wheel);
  useEffect(() => {
    newest.current = wheel;
  });
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    let turned = 0;
    const hear = (event: WheelEvent) => {
      const sideways = event.shiftKey && event.deltaX === 0 ? event.deltaY : event.deltaX;
      if (event.ctrlKey) {
        event.preventDefault();
        turned += event.deltaY;
        if (Math.abs(turned) < NOTCH_PX) return;
        newest.current.onZoom(turned > 0 ? 1 : -1);
        turned = 0;
      } else if (Math.abs(sideways) > Math.abs(event.deltaY) || event.shiftKey) {
        event.preventDefault();
        newest.current.onPan(sideways);
      }
    };
    element.addEventListener('wheel', hear, { passive: false });
    return () => element.removeEventListener('wheel', hear);
  }, [box]);
}
