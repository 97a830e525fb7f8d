'use client';

import { type PointerEvent, useEffect, useRef, useState } from 'react';
import { isToCome } from '@/app/_plan/held-plan';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';
import { LABEL_PX } from './timeline-row';
import type { TimelineRow } from './timeline-rows';
import { snapped } from './timeline-scale';
import { LANE_PX } from './visit-bar';

/** A bar that is being moved. */
export interface DraggedVisit {
  readonly visit: PlannedVisit;
  /** Where it would begin now. */
  readonly startAt: Instant;
  /** Where its bar lies, px from the upper edge. */
  readonly y: number;
}

export interface TimelineTouch {
  readonly rows: readonly TimelineRow[];
  readonly tops: readonly number[];
  readonly pxPerMs: number;
  readonly onPan: (ms: number) => void;
  readonly onOpen: (visit: PlannedVisit) => void;
  readonly onDrop: (visit: PlannedVisit, startAt: Instant) => void;
}

/** A press that moves less is a tap, px. */
const TAP_PX = 4;

interface Press {
  readonly pointerId: number;
  readonly fromX: number;
  lastX: number;
  hasMoved: boolean;
  /** What was pressed; null: the ground. */
  readonly grabbed: { readonly visit: PlannedVisit; readonly y: number } | null;
}

/** A bar that is still to come is moved by dragging it, anything else moves what is in view; a tap opens a bar. */
export function useTimelineTouch({ rows, tops, pxPerMs, onPan, onOpen, onDrop }: TimelineTouch) {
  const press = useRef<Press | null>(null);
  const [drag, setDrag] = useState<DraggedVisit | null>(null);
  const isDragging = drag !== null;

  useEffect(() => {
    if (!isDragging) return;
    const leave = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      press.current = null;
      setDrag(null);
    };
    window.addEventListener('keydown', leave);
    return () => window.removeEventListener('keydown', leave);
  }, [isDragging]);

  function begin(event: PointerEvent<HTMLElement>) {
    if (event.button !== 0 || press.current !== null) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const grabbed = grabbedBar(event, rows, tops);
    const { pointerId, clientX } = event;
    press.current = { pointerId, fromX: clientX, lastX: clientX, hasMoved: false, grabbed };
  }

  function move(event: PointerEvent) {
    const pressed = press.current;
    if (pressed === null || pressed.pointerId !== event.pointerId) return;
    const { clientX } = event;
    if (!pressed.hasMoved && Math.abs(clientX - pressed.fromX) < TAP_PX) return;
    pressed.hasMoved = true;
    const { grabbed } = pressed;
    if (grabbed !== null && isToCome(grabbed.visit)) {
      setDrag({ ...grabbed, startAt: snapped(grabbed.visit.startAt + (clientX - pressed.fromX) / pxPerMs) });
    } else {
      onPan((pressed.lastX - clientX) / pxPerMs);
    }
    pressed.lastX = clientX;
  }

  function end(event: PointerEvent) {
    const pressed = press.current;
    if (pressed === null || pressed.pointerId !== event.pointerId) return;
    press.current = null;
    setDrag(null);
    if (!pressed.hasMoved && pressed.grabbed !== null) onOpen(pressed.grabbed.visit);
    else if (drag !== null && drag.startAt !== drag.visit.startAt) onDrop(drag.visit, drag.startAt);
  }

  function leave() {
    press.current = null;
    setDrag(null);
  }

  return { drag, handlers: { onPointerDown: begin, onPointerMove: move, onPointerUp: end, onPointerCancel: leave } };
}

/** The bar under the pointer, with where it lies. */
function grabbedBar(event: PointerEvent<HTMLElement>, rows: readonly TimelineRow[], tops: readonly number[]) {
  const key = event.target instanceof Element ? event.target.closest('[data-visit]')?.getAttribute('data-visit') : null;
  if (key == null) return null;
  const y = event.clientY - event.currentTarget.getBoundingClientRect().top;
  const index = tops.findIndex((top) => top > y) - 1;
  const bar = rows[index]?.bars.find(({ visit }) => visit.key === key);
  return bar === undefined ? null : { visit: bar.visit, y: (tops[index] ?? 0) + LABEL_PX + bar.lane * LANE_PX };
}
