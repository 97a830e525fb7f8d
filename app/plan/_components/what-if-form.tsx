'use client';

import type { ReactNode } from 'react';
import { useId, useState } from 'react';
import { inputClass } from '@/app/_ui/input-class';
import type { WhatIf } from '@/lib/contracts/stored-plan';
import type { TemperatureUnit } from '@/lib/units/unit-choice';
import { StartButton } from './run-buttons';

interface Named {
  readonly id: string;
  readonly name: string;
}

export interface WhatIfFormProps {
  readonly places: readonly (Named & { readonly capacity: number })[];
  readonly people: readonly Named[];
  readonly adhesives: readonly Named[];
  readonly batches: readonly Named[];
  readonly unit: TemperatureUnit;
}

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
/** An evening where nobody said when. Chosen: as the bench hours begin with. */
const EVENING = { fromMinute: 18 * 60, toMinute: 21 * 60 } as const;
const WARMER_C = [0, 2, 4, 6, 10, -4] as const;

/** What might be changed in the shop: everything may be combined, and nothing of it is saved. */
export function WhatIfForm({ places, people, adhesives, batches, unit }: WhatIfFormProps) {
  const [placeId, setPlaceId] = useState('');
  const [warmerC, setWarmerC] = useState('0');
  const [evening, setEvening] = useState({ personId: '', weekday: '5' });
  const [glue, setGlue] = useState({ fromId: '', toId: '' });
  const [withoutId, setWithoutId] = useState('');
  const place = places.find(({ id }) => id === placeId);
  const whatIf: Partial<WhatIf> = {
    extraPlaces:
      place === undefined ? [] : [{ resourceId: place.id, places: Math.min(500, Math.max(1, place.capacity)) }],
    warmerC: Number(warmerC),
    extraHours:
      evening.personId === '' ? [] : [{ ...EVENING, personId: evening.personId, weekday: Number(evening.weekday) }],
    materials: glue.fromId === '' || glue.toId === '' ? [] : [glue],
    withoutBatchIds: withoutId === '' ? [] : [withoutId],
  };
  const degrees = (value: number) => (unit === 'F' ? `${Math.round(value * 1.8)} °F` : `${value} °C`);
  return (
    <div className="grid gap-4">
      <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-3">
        <Choice label="One more of" value={placeId} onPick={setPlaceId} none="nothing" options={places} />
        <Choice
          label="The shop is"
          value={warmerC}
          onPick={setWarmerC}
          options={WARMER_C.map((value) => ({
            id: String(value),
            name:
              value === 0 ? 'as warm as expected' : `${degrees(Math.abs(value))} ${value > 0 ? 'warmer' : 'colder'}`,
          }))}
        />
        <Choice
          label="One more evening of"
          value={evening.personId}
          onPick={(personId) => setEvening({ ...evening, personId })}
          none="nobody"
          options={people}
        />
        <Choice
          label="on every"
          value={evening.weekday}
          onPick={(weekday) => setEvening({ ...evening, weekday })}
          options={WEEKDAYS.map((name, index) => ({ id: String(index + 1), name }))}
        />
        <Choice
          label="In place of"
          value={glue.fromId}
          onPick={(fromId) => setGlue({ ...glue, fromId })}
          none="no glue or coat"
          options={adhesives}
        />
        <Choice
          label="mix from now on"
          value={glue.toId}
          onPick={(toId) => setGlue({ ...glue, toId })}
          none="choose"
          options={adhesives}
        />
        <Choice label="Leave out batch" value={withoutId} onPick={setWithoutId} none="none" options={batches} />
      </div>
      <div>
        <StartButton label="Try it" whatIf={whatIf} />
      </div>
    </div>
  );
}

interface ChoiceProps {
  readonly label: ReactNode;
  readonly value: string;
  readonly onPick: (value: string) => void;
  readonly options: readonly Named[];
  /** Text of the choice of nothing; without it there is none. */
  readonly none?: string;
}

function Choice({ label, value, onPick, options, none }: ChoiceProps) {
  const id = useId();
  return (
    <div className="grid content-start gap-1.5">
      <label htmlFor={id} className="font-semibold">
        {label}
      </label>
      <select id={id} className={inputClass} value={value} onChange={(event) => onPick(event.currentTarget.value)}>
        {none !== undefined && <option value="">{none}</option>}
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.name}
          </option>
        ))}
      </select>
    </div>
  );
}
