'use client';

import { buttonClass } from '@/app/_ui/button-class';
import { ButtonLink } from '@/app/_ui/button-link';
import { AnswersForm } from './answers-form';
import { FileChoice } from './file-choice';
import { ImportPreview } from './import-preview';
import { ProgressBar } from './progress-bar';
import { type SensorChoice, TargetForm } from './target-form';
import { useImport } from './use-import';

/** From choosing a file to its readings being kept, on one page. */
export function ImportDesk({ sensors }: { readonly sensors: readonly SensorChoice[] }) {
  const desk = useImport();
  const { state, isRunning } = desk;
  const { view, sent, message } = state;
  const isOver = view !== null && ['done', 'failed', 'unreadable'].includes(view.stage);

  return (
    <div className="grid gap-8">
      {sent === null && !isRunning && (view === null || isOver) && (
        <FileChoice onChoose={desk.choose} isAgain={view !== null} />
      )}
      <div role="status" aria-live="polite" className="grid gap-3">
        {sent !== null && <ProgressBar label={`Sending ${state.fileName ?? 'the file'}`} share={sent} />}
        {view !== null && isRunning && (
          <ProgressBar label={`${view.fileName}: ${view.message}`} share={view.progress} />
        )}
        {view !== null && !isRunning && (
          <p className="border-l-4 border-ink bg-well px-4 py-3 font-medium">
            <span className="block font-bold break-words">{view.fileName}</span>
            {view.message}
          </p>
        )}
        {message !== null && <p className="border-l-4 border-accent bg-accent-soft px-4 py-3 font-medium">{message}</p>}
      </div>
      {sent !== null && (
        <div>
          <button type="button" className={buttonClass('plain')} onClick={desk.stopSending}>
            Stop sending
          </button>
        </div>
      )}
      {view !== null && view.lines.length > 0 && (
        <ul className="grid gap-1 overflow-x-auto rounded-sheet border border-line bg-sheet p-4 font-mono text-sm">
          {view.lines.map((line, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: lines of one file, never moved
            <li key={index} className="whitespace-pre-wrap break-words">
              {line}
            </li>
          ))}
        </ul>
      )}
      {view !== null && view.stage === 'asks' && (
        <AnswersForm
          key={view.id}
          questions={view.questions}
          state={state}
          onAnswer={desk.answer}
          onRefuse={desk.refuse}
        />
      )}
      {view !== null && view.preview !== null && (
        <ImportPreview preview={view.preview} isProvisional={view.stage === 'asks'} />
      )}
      {view !== null && view.stage === 'ready' && view.preview !== null && (
        <>
          <TargetForm sensors={sensors} fieldErrors={state.fieldErrors} onConfirm={desk.confirm} />
          <details className="rounded-sheet border border-line bg-sheet p-4">
            <summary className="inline-flex min-h-touch items-center font-semibold underline decoration-line-strong underline-offset-4">
              Read the file differently
            </summary>
            <AnswersForm
              settings={view.preview.settings}
              questions={[]}
              state={state}
              onAnswer={desk.answer}
              onRefuse={desk.refuse}
            />
          </details>
        </>
      )}
      {view !== null && !isRunning && (
        <div className="flex flex-wrap gap-3">
          {view.stage === 'done' && <ButtonLink href="/shop/temperature">See the temperature</ButtonLink>}
          {!isOver && (
            <button type="button" className={buttonClass('plain')} onClick={desk.startOver}>
              Choose another file
            </button>
          )}
        </div>
      )}
    </div>
  );
}
