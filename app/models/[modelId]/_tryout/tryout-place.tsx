'use client';

import dynamic from 'next/dynamic';
import { useEffect, useRef, useState } from 'react';
import type { TryoutProps } from './tryout';

const Tryout = dynamic(() => import('./tryout'), { ssr: false, loading: () => <Waiting /> });

/** Fetches what trying out needs when its place comes into sight: the page itself stays light. */
export function TryoutPlace(props: TryoutProps) {
  const place = useRef<HTMLDivElement>(null);
  const [isInSight, setInSight] = useState(false);
  useEffect(() => {
    const watched = place.current;
    if (watched === null || isInSight) return;
    const observer = new IntersectionObserver((entries) => {
      if (entries.some((entry) => entry.isIntersecting)) setInSight(true);
    });
    observer.observe(watched);
    return () => observer.disconnect();
  }, [isInSight]);
  return (
    <div ref={place} className="min-h-96">
      {isInSight ? <Tryout {...props} /> : <Waiting />}
    </div>
  );
}

function Waiting() {
  return (
    <>
      <p className="text-ink-soft">Drawing…</p>
      <noscript>
        <p>Trying out needs scripts. Depths, angles and places can be changed in the form of the anchors as well.</p>
      </noscript>
    </>
  );
}
