'use client';

import { useId } from 'react';
import { buttonClass } from '../_ui/button-class';

export interface PickablePiece {
  readonly number: number;
  /** Part of the work on it is done already: drawn half filled. */
  readonly isPart?: boolean;
}

export interface PiecePickerProps {
  readonly legend: string;
  readonly pieces: readonly PickablePiece[];
  readonly picked: ReadonlySet<number>;
  readonly onPick: (picked: ReadonlySet<number>) => void;
  readonly error?: string | undefined;
}

/** How many pieces "Next" takes at once: a handful that is set before anybody taps again. Chosen. */
export const HANDFUL = 6;

/** The first few pieces, as they are picked before anybody touched the grid. */
export function firstPieces(pieces: readonly PickablePiece[], count: number): ReadonlySet<number> {
  return new Set(pieces.slice(0, count).map((piece) => piece.number));
}

/** Numbered pieces to tap: a tap takes one in or leaves it out. */
export function PiecePicker({ legend, pieces, picked, onPick, error }: PiecePickerProps) {
  const errorId = useId();
  const toggle = (number: number) => {
    const next = new Set(picked);
    if (!next.delete(number)) next.add(number);
    onPick(next);
  };
  return (
    <fieldset className="grid gap-2" aria-describedby={error === undefined ? undefined : errorId}>
      <legend className="font-semibold">
        {legend}{' '}
        <span className="font-normal text-ink-soft">
          ({picked.size} of {pieces.length})
        </span>
      </legend>
      <div className="flex flex-wrap gap-2">
        {pieces.length > HANDFUL && (
          <button
            type="button"
            className={buttonClass('plain')}
            onClick={() => onPick(firstPieces(pieces, HANDFUL))}
          >{`Next ${HANDFUL}`}</button>
        )}
        <button
          type="button"
          className={buttonClass('plain')}
          onClick={() => onPick(firstPieces(pieces, pieces.length))}
        >
          All
        </button>
        <button type="button" className={buttonClass('plain')} onClick={() => onPick(new Set())}>
          None
        </button>
      </div>
      <div className="grid max-h-80 grid-cols-[repeat(auto-fill,minmax(3rem,1fr))] gap-1.5 overflow-y-auto p-1">
        {pieces.map((piece) => (
          <button
            key={piece.number}
            type="button"
            aria-pressed={picked.has(piece.number)}
            aria-label={`Piece ${piece.number}${piece.isPart === true ? ', partly done' : ''}`}
            onClick={() => toggle(piece.number)}
            className="relative grid min-h-touch place-items-center rounded-sheet border-2 border-line-strong bg-sheet font-semibold hover:border-ink aria-pressed:border-ink aria-pressed:bg-ink aria-pressed:text-ink-inverse"
          >
            {piece.number}
            {piece.isPart === true && (
              <span
                aria-hidden="true"
                className="absolute inset-x-1.5 bottom-1 h-1 rounded-full bg-current opacity-70"
              />
            )}
          </button>
        ))}
      </div>
      {error !== undefined && (
        <p id={errorId} className="text-sm font-semibold text-accent">
          {error}
        </p>
      )}
    </fieldset>
  );
}
