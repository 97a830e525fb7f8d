'use client';

import { useId, useState } from 'react';
import { useActionForm } from '@/app/_ui/action-form';
import { buttonClass } from '@/app/_ui/button-class';
import { FieldError } from '@/app/_ui/field';
import { inputClass } from '@/app/_ui/input-class';
import { type Row, type Rows, useRows } from '@/app/_ui/rows';
import { lengthSign } from '@/app/_ui/unit-sign';
import type { LengthUnit } from '@/lib/units/unit-choice';
import { type PastedStation, readPastedStations } from './pasted-stations';
import { ShapeChoice } from './shape-choice';

const EMPTY: PastedStation = { x: '', height: '', width: '' };
const COLUMNS = [
  { key: 'x', title: 'From the nose' },
  { key: 'height', title: 'Height' },
  { key: 'width', title: 'Width' },
] as const;

export interface StationRowsProps {
  readonly stations: readonly PastedStation[];
  readonly lengthUnit: LengthUnit;
}

/** The stations of a body as a small table that can grow, shrink, or be pasted whole. */
export function StationRows({ stations, lengthUnit }: StationRowsProps) {
  const unit = lengthSign(lengthUnit);
  const list = useRows(stations);
  return (
    <div className="grid gap-4">
      <div className="grid max-w-2xl gap-2">
        <div aria-hidden="true" className="grid grid-cols-[1fr_1fr_1fr_3rem] gap-2 text-sm font-semibold text-ink-soft">
          {COLUMNS.map((column) => (
            <span key={column.key}>
              {column.title}, {unit}
            </span>
          ))}
        </div>
        {list.rows.map((row, index) => (
          <StationRow key={row.key} list={list} row={row} index={index} />
        ))}
        {list.rows.length === 0 && <p className="text-ink-soft">No stations yet.</p>}
      </div>
      <div className="flex flex-wrap gap-3">
        <button type="button" className={buttonClass('plain')} onClick={() => list.add(EMPTY)}>
          Add a station
        </button>
      </div>
      <ShapeChoice list={list} lengthUnit={lengthUnit} />
      <Paste list={list} />
    </div>
  );
}

interface StationRowProps {
  readonly list: Rows<PastedStation>;
  readonly row: Row<PastedStation>;
  readonly index: number;
}

function StationRow({ list, row, index }: StationRowProps) {
  const { state, formId } = useActionForm();
  const names = COLUMNS.map((column) => ({ ...column, name: `stations.${index}.${column.key}` }));
  const errors = names.flatMap(({ name, title }) => {
    const error = state.status === 'refused' ? state.fieldErrors[name] : undefined;
    return error === undefined ? [] : [{ name, text: `${title}: ${error}` }];
  });
  return (
    <fieldset className="grid gap-1">
      <legend className="sr-only">Station {index + 1}</legend>
      <div className="grid grid-cols-[1fr_1fr_1fr_3rem] gap-2">
        {names.map(({ key, name, title }) => (
          <input
            key={key}
            name={name}
            aria-label={`${title}, station ${index + 1}`}
            aria-invalid={errors.some((error) => error.name === name)}
            aria-describedby={errors.some((error) => error.name === name) ? `${formId}-${name}-error` : undefined}
            defaultValue={row.start[key]}
            autoComplete="off"
            maxLength={40}
            className={inputClass}
          />
        ))}
        <button
          type="button"
          aria-label={`Remove station ${index + 1}`}
          className={buttonClass('quiet')}
          onClick={() => list.remove(index)}
        >
          <svg viewBox="0 0 16 16" aria-hidden="true" className="size-3.5 stroke-current stroke-2">
            <path d="M2 2l12 12M14 2 2 14" />
          </svg>
        </button>
      </div>
      {errors.map((error) => (
        <FieldError key={error.name} id={`${formId}-${error.name}`} text={error.text} />
      ))}
    </fieldset>
  );
}

function Paste({ list }: { readonly list: Rows<PastedStation> }) {
  const id = useId();
  const [text, setText] = useState('');
  const [answer, setAnswer] = useState('');

  function take() {
    const pasted = readPastedStations(text);
    if (!pasted.ok) {
      setAnswer(`Line ${pasted.line} does not hold three values: ${pasted.text}`);
      return;
    }
    list.replace(pasted.stations);
    setText('');
    setAnswer(`${pasted.stations.length} stations put into the table. Look them over, then save.`);
  }

  return (
    <details className="max-w-2xl">
      <summary className="inline-flex min-h-touch items-center font-semibold underline decoration-line-strong underline-offset-4">
        Paste points from a sheet
      </summary>
      <div className="mt-2 grid gap-3">
        <label htmlFor={id} className="font-semibold">
          One station a line: from the nose, height, width
        </label>
        <textarea
          id={id}
          rows={6}
          value={text}
          onChange={(event) => setText(event.currentTarget.value)}
          aria-describedby={`${id}-hint`}
          className={inputClass}
        />
        <p id={`${id}-hint`} className="text-sm text-ink-soft">
          With tabs or semicolons between, or commas where the numbers have decimal points. They take the place of the
          stations above.
        </p>
        <div>
          <button type="button" className={buttonClass('plain')} onClick={take} disabled={text.trim() === ''}>
            Put them into the table
          </button>
        </div>
        <p role="status" className="font-medium">
          {answer}
        </p>
      </div>
    </details>
  );
}
