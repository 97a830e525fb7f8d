'use client';

import type { RefObject } from 'react';
import { useLayoutEffect, useRef, useState } from 'react';

/**
 * Width of an element in px, so that what is drawn in it can have lettering of one size on a phone and on a desk. The
 * first picture is drawn before the browser shows anything.
 */
export function useWidth<Element extends HTMLElement>(firstPx: number): readonly [RefObject<Element | null>, number] {
  const element = useRef<Element>(null);
  const [width, setWidth] = useState(firstPx);
  useLayoutEffect(() => {
    const watched = element.current;
    if (watched === null) return;
    const take = () => setWidth(Math.max(1, Math.round(watched.clientWidth)));
    take();
    const observer = new ResizeObserver(take);
    observer.observe(watched);
    return () => observer.disconnect();
  }, []);
  return [element, width];
}
