'use client';

import { useId, useRef, useState } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import { inputClass } from '@/app/_ui/input-class';
import type { Rows } from '@/app/_ui/rows';
import { lengthSign } from '@/app/_ui/unit-sign';
import { BODY_KIND_WORDS } from '@/app/models/_components/words';
import { BODY_KINDS, type BodyKind } from '@/lib/geometry/body-shapes';
import type { LengthUnit } from '@/lib/units/unit-choice';
import type { PastedStation } from './pasted-stations';
import { ShapePreview } from './shape-preview';
import { shapedStations } from './shaped-stations';

export interface ShapeChoiceProps {
  readonly list: Rows<PastedStation>;
  readonly lengthUnit: LengthUnit;
}

/** Fills the stations with a plain shape of a kind of body, to begin from and change. */
export function ShapeChoice({ list, lengthUnit }: ShapeChoiceProps) {
  const id = useId();
  const box = useRef<HTMLDetailsElement>(null);
  const [kind, setKind] = useState<BodyKind>('popper');
  const [height, setHeight] = useState('');
  const [width, setWidth] = useState('');
  const [answer, setAnswer] = useState('');

  function fill() {
    const lengthField = box.current?.closest('form')?.elements.namedItem('length');
    const length = lengthField instanceof HTMLInputElement ? lengthField.value : '';
    const shaped = shapedStations({ kind, length, height, width }, lengthUnit);
    if (!shaped.ok) {
      setAnswer(`The ${shaped.field} cannot be read as a size. Write it as the calipers say.`);
      return;
    }
    list.replace(shaped.stations);
    setAnswer(
      `${shaped.stations.length} stations of a ${BODY_KIND_WORDS[kind]} shape put into the table. Change them to yours, then save.`,
    );
  }

  return (
    <details ref={box} className="max-w-2xl">
      <summary className="inline-flex min-h-touch items-center font-semibold underline decoration-line-strong underline-offset-4">
        Begin from a plain shape
      </summary>
      <div className="mt-2 grid gap-3">
        <div className="grid gap-4 sm:grid-cols-3">
          <label className="grid gap-1.5">
            <span className="font-semibold">Kind of body</span>
            <select
              value={kind}
              className={inputClass}
              onChange={(event) => setKind(kindOf(event.currentTarget.value))}
            >
              {BODY_KINDS.map((of) => (
                <option key={of} value={of}>
                  {BODY_KIND_WORDS[of]}
                </option>
              ))}
            </select>
          </label>
          <SizeInput label="Greatest height" unit={lengthUnit} value={height} onType={setHeight} />
          <SizeInput label="Greatest width" unit={lengthUnit} value={width} onType={setWidth} />
        </div>
        <ShapePreview kind={kind} height={height} width={width} lengthUnit={lengthUnit} />
        <p id={`${id}-hint`} className="text-sm text-ink-soft">
          As long as the length above. It takes the place of the stations in the table.
        </p>
        <div>
          <button type="button" aria-describedby={`${id}-hint`} className={buttonClass('plain')} onClick={fill}>
            Fill the table
          </button>
        </div>
        <p role="status" className="font-medium">
          {answer}
        </p>
      </div>
    </details>
  );
}

interface SizeInputProps {
  readonly label: string;
  readonly unit: LengthUnit;
  readonly value: string;
  readonly onType: (text: string) => void;
}

function SizeInput({ label, unit, value, onType }: SizeInputProps) {
  return (
    <label className="grid gap-1.5">
      <span className="font-semibold">
        {label}, {lengthSign(unit)}
      </span>
      <input
        value={value}
        maxLength={40}
        autoComplete="off"
        className={inputClass}
        onChange={(event) => onType(event.currentTarget.value)}
      />
    </label>
  );
}

function kindOf(value: string): BodyKind {
  return BODY_KINDS.find((kind) => kind === value) ?? 'popper';
}
