'use client';

import { useEffect } from 'react';
import { buttonClass } from './_ui/button-class';

interface ErrorPageProps {
  readonly error: Error & { readonly digest?: string };
  readonly retry: () => void;
}

export default function ErrorPage({ error, retry }: ErrorPageProps) {
  useEffect(() => {
    console.error(error);
  }, [error]);
  return (
    <div className="mx-auto grid max-w-2xl justify-items-start gap-4 px-4 py-12">
      <h1 className="text-3xl font-bold">Something went wrong on our side</h1>
      <p className="text-ink-soft">
        What was saved before is safe: every event at the bench is written down before it is confirmed. Try again. If it
        comes back, the log of the server names it
        {error.digest === undefined ? '.' : <span> as {error.digest}.</span>}
      </p>
      <div className="flex flex-wrap gap-3">
        <button type="button" onClick={() => retry()} className={buttonClass('primary')}>
          Try again
        </button>
        <a href="/" className={buttonClass('plain')}>
          To the Bench
        </a>
      </div>
    </div>
  );
}
