'use client';

import { type FormEvent, useId, useState } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import { FieldFrame } from '@/app/_ui/field';
import { inputClass } from '@/app/_ui/input-class';

/** Value of the choice that makes a new sensor. */
const NEW = 'new';

export interface SensorChoice {
  readonly id: string;
  readonly name: string;
}

export interface TargetFormProps {
  readonly sensors: readonly SensorChoice[];
  readonly fieldErrors: Readonly<Record<string, string>>;
  readonly onConfirm: (target: object) => Promise<void>;
}

/** Which sensor the log is of, and the button that takes it in. */
export function TargetForm({ sensors, fieldErrors, onConfirm }: TargetFormProps) {
  const id = useId();
  const only = sensors.length === 1 ? sensors[0] : undefined;
  const [choice, setChoice] = useState(sensors.length === 0 ? NEW : (only?.id ?? ''));
  const [name, setName] = useState('');
  const [place, setPlace] = useState('');
  const [isPending, setPending] = useState(false);

  async function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    setPending(true);
    await onConfirm(choice === NEW ? { newSensor: { name, place } } : choice === '' ? {} : { sensorId: choice });
    setPending(false);
  }

  const choiceError = fieldErrors.sensorId;
  const nameError = fieldErrors['newSensor.name'];
  const placeError = fieldErrors['newSensor.place'];
  return (
    <form onSubmit={submit} noValidate className="grid gap-5">
      <div className="grid items-start gap-5 sm:grid-cols-3">
        <FieldFrame id={`${id}-sensor`} label="Sensor this log is of" error={choiceError}>
          <select
            id={`${id}-sensor`}
            value={choice}
            onChange={(event) => setChoice(event.currentTarget.value)}
            aria-invalid={choiceError !== undefined}
            aria-describedby={choiceError === undefined ? undefined : `${id}-sensor-error`}
            className={inputClass}
          >
            {sensors.length > 1 && <option value="">Choose…</option>}
            {sensors.map((sensor) => (
              <option key={sensor.id} value={sensor.id}>
                {sensor.name}
              </option>
            ))}
            <option value={NEW}>A new sensor</option>
          </select>
        </FieldFrame>
        {choice === NEW && (
          <>
            <FieldFrame id={`${id}-name`} label="Name of the new sensor" error={nameError}>
              <input
                id={`${id}-name`}
                value={name}
                maxLength={60}
                autoComplete="off"
                onChange={(event) => setName(event.currentTarget.value)}
                aria-invalid={nameError !== undefined}
                aria-describedby={nameError === undefined ? undefined : `${id}-name-error`}
                className={inputClass}
              />
            </FieldFrame>
            <FieldFrame id={`${id}-place`} label="Where it hangs" error={placeError} isOptional>
              <input
                id={`${id}-place`}
                value={place}
                maxLength={120}
                autoComplete="off"
                onChange={(event) => setPlace(event.currentTarget.value)}
                aria-invalid={placeError !== undefined}
                aria-describedby={placeError === undefined ? undefined : `${id}-place-error`}
                className={inputClass}
              />
            </FieldFrame>
          </>
        )}
      </div>
      <div>
        <button type="submit" disabled={isPending} className={buttonClass('primary')}>
          {isPending ? 'Taking in…' : 'Take in these readings'}
        </button>
      </div>
    </form>
  );
}
