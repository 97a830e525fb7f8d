'use client';

import { type FormEvent, useState, useTransition } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import { inputClass } from '@/app/_ui/input-class';
import { Section } from '@/app/_ui/page';
import { stockImportAction } from '../actions';
import type { StockImportState } from './import-state';

/** Lines of a preview that are shown; the counts stand for all. Chosen. */
const SHOWN = 50;

const NO_ANSWER: StockImportState = {
  status: 'refused',
  message: 'The server did not answer, so this may not be taken in. The file is still chosen: try again.',
};

/** Choosing a list, looking at what was understood of it, and taking it in. */
export function StockImport() {
  const [state, setState] = useState<StockImportState>({ status: 'idle' });
  const [isBusy, start] = useTransition();

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const submitter = event.nativeEvent instanceof SubmitEvent ? event.nativeEvent.submitter : null;
    const data = new FormData(event.currentTarget, submitter);
    start(async () => setState(await stockImportAction(data).catch(() => NO_ANSWER)));
  }

  const isReady = state.status === 'preview' && state.lots.length > 0;
  return (
    <form onSubmit={send} className="grid max-w-3xl gap-6">
      <div className="grid gap-5 sm:grid-cols-2">
        <label className="grid content-start gap-1.5">
          <span className="font-semibold">List as CSV</span>
          <input
            type="file"
            name="file"
            accept=".csv,.txt,.tsv,text/csv,text/plain"
            className={inputClass}
            onChange={() => setState({ status: 'idle' })}
          />
        </label>
        <label className="grid content-start gap-1.5">
          <span className="font-semibold">Days like 3/4/2026 mean</span>
          <select name="dayOrder" className={inputClass} defaultValue="">
            <option value="">not said</option>
            <option value="day-first">3 April, day first</option>
            <option value="month-first">March 4, month first</option>
          </select>
        </label>
      </div>
      <div className="flex flex-wrap gap-3">
        <button
          type="submit"
          name="step"
          value="look"
          disabled={isBusy}
          className={buttonClass(isReady ? 'plain' : 'primary')}
        >
          {isBusy ? 'Reading…' : 'Look at it'}
        </button>
        {isReady && (
          <button type="submit" name="step" value="take" disabled={isBusy} className={buttonClass('primary')}>
            Take in {state.lots.length} {state.lots.length === 1 ? 'lot' : 'lots'}
          </button>
        )}
      </div>
      <div role="status" aria-live="polite" className="grid gap-6">
        <Answer state={state} />
      </div>
    </form>
  );
}

function Answer({ state }: { readonly state: StockImportState }) {
  switch (state.status) {
    case 'idle':
      return null;
    case 'refused':
      return <p className="border-l-4 border-accent bg-accent-soft px-4 py-3 font-medium">{state.message}</p>;
    case 'asks':
      return (
        <p className="border-l-4 border-accent bg-accent-soft px-4 py-3 font-medium">
          “{state.example}” could be read two ways. Say above which comes first, the day or the month, and look again.
        </p>
      );
    case 'done':
      return (
        <p className="border-l-4 border-ink bg-well px-4 py-3 font-medium">
          ✓ {state.lots} {state.lots === 1 ? 'lot' : 'lots'} and {state.materials} new{' '}
          {state.materials === 1 ? 'material' : 'materials'} taken in.
        </p>
      );
    case 'preview':
      return <Preview state={state} />;
  }
}

function Preview({ state }: { readonly state: Extract<StockImportState, { status: 'preview' }> }) {
  const { lots, newMaterials, knownLines, refused, blankLines } = state;
  return (
    <>
      <Section title={`${lots.length} ${lots.length === 1 ? 'lot' : 'lots'} to take in`} lead="Nothing is written yet.">
        {newMaterials.length > 0 && <p>New materials: {newMaterials.join(', ')}.</p>}
        {knownLines.length > 0 && (
          <p className="text-ink-soft">
            {knownLines.length} {knownLines.length === 1 ? 'line is' : 'lines are'} in Stock already and left as there:
            line {shown(knownLines).join(', ')}.
          </p>
        )}
        {blankLines > 0 && <p className="text-ink-soft">{blankLines} empty lines.</p>}
        <ul className="grid gap-1">
          {lots.slice(0, SHOWN).map((lot) => (
            <li key={lot.line}>
              Line {lot.line}: <strong>{lot.materialName}</strong>, lot {lot.code}, {lot.quantity}
              {lot.expiresOn === null ? '' : `, good until ${lot.expiresOn}`}
            </li>
          ))}
          {lots.length > SHOWN && <li className="text-ink-soft">and {lots.length - SHOWN} more</li>}
        </ul>
      </Section>
      {refused.length > 0 && (
        <Section title={`${refused.length} not taken`} lead="Put them right in the file and look again, or leave them.">
          <ul className="grid gap-1">
            {refused.slice(0, SHOWN).map(({ line, reason, text }) => (
              <li key={line}>
                Line {line}: {reason}. <span className="text-ink-soft">{text}</span>
              </li>
            ))}
            {refused.length > SHOWN && <li className="text-ink-soft">and {refused.length - SHOWN} more</li>}
          </ul>
        </Section>
      )}
    </>
  );
}

function shown(lines: readonly number[]): string[] {
  const some = lines.slice(0, SHOWN).map(String);
  return lines.length > SHOWN ? [...some, '…'] : some;
}
