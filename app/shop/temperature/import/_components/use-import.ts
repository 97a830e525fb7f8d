'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import type { ImportView } from '@/app/_import/import-view';
import {
  type AnswerTexts,
  askJob,
  confirmImport,
  dropImport,
  type ImportAnswer,
  sendAnswers,
  sendFile,
} from './import-requests';

/** How often the page asks how far the server is, ms. Chosen. */
const ASK_EVERY_MS = 300;

/** Where the page stands: choosing, sending, or looking at a job. */
export interface ImportState {
  readonly fileName: string | null;
  /** Share of the file that is sent; null when none is on its way. */
  readonly sent: number | null;
  readonly view: ImportView | null;
  /** What was wrong with the last request, and beside which fields. */
  readonly message: string | null;
  readonly fieldErrors: Readonly<Record<string, string>>;
  /** Answers given so far; they are kept over every reading of the file. */
  readonly answers: AnswerTexts;
}

const START: ImportState = { fileName: null, sent: null, view: null, message: null, fieldErrors: {}, answers: {} };

/** An import and what can be done with it. */
export function useImport() {
  const [state, setState] = useState<ImportState>(START);
  const stop = useRef<() => void>(() => {});

  const take = useCallback((answer: ImportAnswer, change: Partial<ImportState> = {}) => {
    setState((before) =>
      answer.ok
        ? { ...before, ...change, sent: null, view: answer.view, message: null, fieldErrors: answer.view.fieldErrors }
        : {
            ...before,
            ...change,
            sent: null,
            view: answer.isGone === true ? null : before.view,
            message: answer.message,
            fieldErrors: answer.fieldErrors ?? {},
          },
    );
  }, []);

  const isRunning = state.view !== null && ['receiving', 'reading', 'writing'].includes(state.view.stage);
  const id = state.view?.id ?? null;
  useEffect(() => {
    if (!isRunning || id === null) return;
    let isOver = false;
    let timer: ReturnType<typeof setTimeout>;
    const askOn = async () => {
      const answer = await askJob(id);
      if (isOver) return;
      take(answer);
      timer = setTimeout(askOn, ASK_EVERY_MS);
    };
    timer = setTimeout(askOn, ASK_EVERY_MS);
    return () => {
      isOver = true;
      clearTimeout(timer);
    };
  }, [isRunning, id, take]);

  return {
    state,
    isRunning,
    async choose(file: File) {
      if (id !== null) dropImport(id);
      setState({ ...START, fileName: file.name, sent: 0 });
      const onSent = (sent: number) => setState((before) => (before.sent === null ? before : { ...before, sent }));
      take(
        await sendFile(file, onSent, (abort) => {
          stop.current = abort;
        }),
      );
    },
    stopSending: () => stop.current(),
    async answer(changed: AnswerTexts) {
      if (id === null) return;
      const answers = { ...state.answers, ...changed };
      take(await sendAnswers(id, answers), { answers });
    },
    async confirm(target: object) {
      if (id !== null) take(await confirmImport(id, target));
    },
    startOver() {
      if (id !== null) dropImport(id);
      setState(START);
    },
    refuse: (fieldErrors: Readonly<Record<string, string>>) => setState((before) => ({ ...before, fieldErrors })),
  };
}
