'use client';

import type { ReactNode } from 'react';
import { useRef, useState } from 'react';
import { useActionForm } from './action-form';
import { buttonClass } from './button-class';

export interface Row<T> {
  readonly key: number;
  readonly start: T;
}

export interface Rows<T> {
  readonly rows: readonly Row<T>[];
  add(start: T): void;
  remove(index: number): void;
  /** Changes places with the row before (-1) or after (1). */
  move(index: number, by: -1 | 1): void;
  /** Puts others in the place of all of them. */
  replace(starts: readonly T[]): void;
}

/** Rows of a form that can be added, taken away and moved; what was typed in them goes along. */
export function useRows<T>(initial: readonly T[]): Rows<T> {
  const { dropMarks } = useActionForm();
  const nextKey = useRef(initial.length);
  const [rows, setRows] = useState<readonly Row<T>[]>(() => initial.map((start, key) => ({ key, start })));
  const made = (start: T): Row<T> => {
    nextKey.current += 1;
    return { key: nextKey.current, start };
  };
  return {
    rows,
    add: (start) => {
      const row = made(start);
      setRows((before) => [...before, row]);
    },
    replace: (starts) => {
      dropMarks();
      setRows(starts.map(made));
    },
    remove: (index) => {
      dropMarks();
      setRows((before) => before.filter((_, at) => at !== index));
    },
    move: (index, by) => {
      dropMarks();
      setRows((before) => swapped(before, index, index + by));
    },
  };
}

function swapped<T>(items: readonly T[], a: number, b: number): readonly T[] {
  const first = items[a];
  const second = items[b];
  if (first === undefined || second === undefined) return items;
  return items.map((item, index) => (index === a ? second : index === b ? first : item));
}

export interface RowFrameProps<T> {
  readonly list: Rows<T>;
  readonly index: number;
  /** "Anchor 2": says which row the buttons move. */
  readonly title: string;
  readonly isOrdered?: boolean;
  readonly children: ReactNode;
}

/** One row with its buttons. */
export function RowFrame<T>({ list, index, title, isOrdered = true, children }: RowFrameProps<T>) {
  const frame = useRef<HTMLFieldSetElement>(null);
  const [said, setSaid] = useState('');

  function move(by: -1 | 1) {
    list.move(index, by);
    setSaid(`Now in place ${index + 1 + by} of ${list.rows.length}.`);
    // The browser lets go of the focus when the row changes its place.
    requestAnimationFrame(() => {
      const wanted = frame.current?.querySelector<HTMLElement>(by < 0 ? '[data-up]:enabled' : '[data-down]:enabled');
      const other = frame.current?.querySelector<HTMLElement>('[data-up]:enabled, [data-down]:enabled');
      (wanted ?? other)?.focus();
    });
  }

  return (
    <fieldset ref={frame} className="min-w-0 rounded-sheet border border-line-strong bg-sheet p-4">
      <legend className="sr-only">{title}</legend>
      <div className="mb-3 flex flex-wrap items-center justify-between gap-2">
        <p aria-hidden="true" className="font-bold">
          {title}
        </p>
        <div className="flex gap-1">
          {isOrdered && (
            <>
              <RowButton isUp label={`Move ${title} up`} isDisabled={index === 0} onPress={() => move(-1)} />
              <RowButton
                isUp={false}
                label={`Move ${title} down`}
                isDisabled={index === list.rows.length - 1}
                onPress={() => move(1)}
              />
            </>
          )}
          <button
            type="button"
            aria-label={`Remove ${title}`}
            className={buttonClass('quiet')}
            onClick={() => list.remove(index)}
          >
            Remove
          </button>
        </div>
      </div>
      <div className="grid gap-4">{children}</div>
      <p role="status" className="sr-only">
        {said}
      </p>
    </fieldset>
  );
}

interface RowButtonProps {
  readonly isUp: boolean;
  readonly label: string;
  readonly isDisabled: boolean;
  readonly onPress: () => void;
}

function RowButton({ isUp, label, isDisabled, onPress }: RowButtonProps) {
  return (
    <button
      type="button"
      data-up={isUp ? '' : undefined}
      data-down={isUp ? undefined : ''}
      aria-label={label}
      disabled={isDisabled}
      className={buttonClass('plain')}
      onClick={onPress}
    >
      <svg viewBox="0 0 16 16" aria-hidden="true" className="size-4 fill-none stroke-current stroke-2">
        <path d={isUp ? 'M3 10l5-5 5 5' : 'M3 6l5 5 5-5'} />
      </svg>
    </button>
  );
}
