'use client';

import { useId, useState } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import { ButtonLink } from '@/app/_ui/button-link';
import { inputClass } from '@/app/_ui/input-class';
import { PullFileAnswers } from './pull-file-answers';
import { PullFilePreview } from './pull-file-preview';
import type { PullFileView } from './pull-file-view';

const NO_ANSWER: PullFileView = {
  state: 'refused',
  message: 'The server did not answer. Nothing was taken in; try again.',
  firstLines: [],
};

/** A file of pulls: choose it, answer what it leaves open, look at every row, take it in. */
export function PullFileDesk({ seriesId }: { readonly seriesId: string }) {
  const id = useId();
  const [file, setFile] = useState<File | null>(null);
  const [answers, setAnswers] = useState<Readonly<Record<string, string>>>({});
  const [view, setView] = useState<PullFileView | null>(null);
  const [isPending, setPending] = useState(false);

  async function send(chosen: File, given: Readonly<Record<string, string>>, confirm: boolean) {
    setPending(true);
    const query = new URLSearchParams({ fileName: chosen.name.slice(0, 200), ...given });
    if (confirm) query.set('confirm', 'yes');
    try {
      const response = await fetch(`/api/v1/pull-series/${seriesId}/import?${query}`, { method: 'POST', body: chosen });
      setView(await response.json());
    } catch {
      setView(NO_ANSWER);
    }
    setPending(false);
  }

  function choose(chosen: File | undefined) {
    if (chosen === undefined) return;
    setFile(chosen);
    setAnswers({});
    void send(chosen, {}, false);
  }

  return (
    <div className="grid gap-6">
      <div className="grid max-w-2xl gap-1.5">
        <label htmlFor={id} className="font-semibold">
          File of pulls
        </label>
        <input
          id={id}
          type="file"
          accept=".csv,.txt,.tsv,text/csv,text/plain,text/tab-separated-values"
          onChange={(event) => choose(event.currentTarget.files?.[0])}
          className={inputClass}
        />
      </div>
      <div role="status" aria-live="polite" className="grid gap-6">
        {isPending && <p>Reading…</p>}
        {view?.state === 'refused' && (
          <p className="max-w-3xl border-l-4 border-accent bg-accent-soft px-4 py-3 font-medium">{view.message}</p>
        )}
        {(view?.state === 'refused' || view?.state === 'asks') && view.firstLines.length > 0 && (
          <pre className="overflow-x-auto bg-well p-3 text-sm">{view.firstLines.join('\n')}</pre>
        )}
        {view?.state === 'asks' && file !== null && (
          <PullFileAnswers
            questions={view.questions}
            onAnswer={(given) => {
              const all = { ...answers, ...given };
              setAnswers(all);
              void send(file, all, false);
            }}
          />
        )}
        {(view?.state === 'preview' || view?.state === 'done') && <PullFilePreview view={view} />}
      </div>
      {view?.state === 'preview' && file !== null && view.fresh.length > 0 && (
        <div>
          <button
            type="button"
            disabled={isPending}
            className={buttonClass('primary')}
            onClick={() => void send(file, answers, true)}
          >
            Take in {view.fresh.length === 1 ? '1 pull' : `${view.fresh.length} pulls`}
          </button>
        </div>
      )}
      {view?.state === 'done' && (
        <div>
          <ButtonLink href={`/pull-tests/${seriesId}`} weight="primary">
            Go to the series
          </ButtonLink>
        </div>
      )}
    </div>
  );
}
