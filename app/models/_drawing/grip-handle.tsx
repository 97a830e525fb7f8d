'use client';

import type { KeyboardEvent, PointerEvent, ReactNode } from 'react';
import { useEffect, useRef } from 'react';

interface ScreenPoint {
  readonly x: number;
  readonly y: number;
}

export interface GripHandleProps {
  readonly at: ScreenPoint;
  readonly label: string;
  /** Its value as a number, for assistive tools, and in words. */
  readonly value: number;
  readonly valueText: string;
  readonly valueMax: number;
  /** Where it was dragged to, in px of the drawing: at most once a frame. */
  readonly onDrag: (to: ScreenPoint) => void;
  /** A key; true when it meant something. */
  readonly onKey: (key: string) => boolean;
  readonly children: ReactNode;
}

/** Touch size of a grip, px. */
const REACH_PX = 22;

/** A thing in a drawing that can be dragged by finger, mouse or pen, and moved with the arrow keys. */
export function GripHandle({ at, label, value, valueText, valueMax, onDrag, onKey, children }: GripHandleProps) {
  const waiting = useRef<{ frame: number; to: ScreenPoint } | null>(null);
  const offset = useRef<ScreenPoint | null>(null);
  const drag = useRef(onDrag);
  useEffect(() => {
    drag.current = onDrag;
  }, [onDrag]);
  useEffect(() => {
    const pending = waiting;
    return () => {
      if (pending.current !== null) cancelAnimationFrame(pending.current.frame);
    };
  }, []);

  function pointIn(event: PointerEvent<SVGGElement>): ScreenPoint {
    const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect();
    return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) };
  }

  function begin(event: PointerEvent<SVGGElement>) {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const from = pointIn(event);
    // Taken beside its middle, a grip must not jump to the finger.
    offset.current = { x: at.x - from.x, y: at.y - from.y };
  }

  function move(event: PointerEvent<SVGGElement>) {
    if (offset.current === null) return;
    const point = pointIn(event);
    const to = { x: point.x + offset.current.x, y: point.y + offset.current.y };
    if (waiting.current !== null) {
      waiting.current.to = to;
      return;
    }
    const frame = requestAnimationFrame(() => {
      const last = waiting.current;
      waiting.current = null;
      if (last !== null) drag.current(last.to);
    });
    waiting.current = { frame, to };
  }

  function end() {
    offset.current = null;
  }

  function press(event: KeyboardEvent<SVGGElement>) {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (onKey(event.key)) event.preventDefault();
  }

  return (
    <g
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-valuenow={Math.round(value * 100) / 100}
      aria-valuemin={0}
      aria-valuemax={Math.round(valueMax * 100) / 100}
      aria-valuetext={valueText}
      transform={`translate(${at.x} ${at.y})`}
      className="cursor-grab touch-none active:cursor-grabbing [&:focus-visible>circle]:opacity-100 outline-none"
      onPointerDown={begin}
      onPointerMove={move}
      onPointerUp={end}
      onPointerCancel={end}
      onKeyDown={press}
    >
      <circle r={REACH_PX - 2} className="fill-transparent stroke-accent opacity-0" strokeWidth="3" />
      <circle r={REACH_PX} className="fill-transparent" />
      {children}
    </g>
  );
}
