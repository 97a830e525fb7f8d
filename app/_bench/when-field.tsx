'use client';

import { useId } from 'react';
import { clockText } from '@/lib/units/format-instant';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import { instantOfWallMs, zoneOffsetMs } from '@/lib/units/zoned-time';
import { FieldError } from '../_ui/field';
import { inputClass } from '../_ui/input-class';
import { useBenchWorld } from './bench-context';
import { serverTime } from './server-clock';

export interface WhenFieldProps {
  /** Null: now. */
  readonly at: Instant | null;
  readonly onChange: (at: Instant | null) => void;
  readonly error?: string | undefined;
}

/** Ways back from now that cover what is usually forgotten, in minutes. Chosen. */
const AGO_MINUTES = [5, 15, 30] as const;

/** When it happened: now, unless somebody says otherwise. Typed times are the shop's wall time. */
export function WhenField({ at, onChange, error }: WhenFieldProps) {
  const { zone } = useBenchWorld();
  const id = useId();
  return (
    <details open={error !== undefined || undefined}>
      <summary className="inline-flex min-h-touch items-center font-semibold text-ink-soft underline decoration-line-strong underline-offset-4">
        {at === null ? 'It happens now' : `It happened at ${clockText(at, zone)}`}
      </summary>
      <div className="grid gap-2 pt-1">
        <div className="flex flex-wrap gap-2">
          <Ago label="Now" isPicked={at === null} onClick={() => onChange(null)} />
          {AGO_MINUTES.map((minutes) => (
            <Ago
              key={minutes}
              label={`${minutes} min ago`}
              isPicked={false}
              onClick={() => onChange(serverTime() - minutes * MINUTE_MS)}
            />
          ))}
        </div>
        <label htmlFor={id} className="text-sm font-semibold">
          Or at this hour in the shop
        </label>
        <input
          id={id}
          type="datetime-local"
          className={inputClass}
          aria-invalid={error !== undefined}
          aria-describedby={error === undefined ? undefined : `${id}-error`}
          value={at === null ? '' : wallText(at, zone)}
          onChange={(event) => onChange(instantOfText(event.currentTarget.value, zone))}
        />
        {error !== undefined && <FieldError id={id} text={error} />}
      </div>
    </details>
  );
}

function Ago({
  label,
  isPicked,
  onClick,
}: {
  readonly label: string;
  readonly isPicked: boolean;
  readonly onClick: () => void;
}) {
  return (
    <button
      type="button"
      aria-pressed={isPicked}
      onClick={onClick}
      className="min-h-touch rounded-sheet border-2 border-line-strong bg-sheet px-3 aria-pressed:border-ink aria-pressed:font-semibold"
    >
      {label}
    </button>
  );
}

/** The wall time of an instant as the browser's own time field writes it. */
function wallText(at: Instant, zone: string): string {
  return new Date(at + zoneOffsetMs(at, zone)).toISOString().slice(0, 16);
}

function instantOfText(text: string, zone: string): Instant | null {
  const wallMs = Date.parse(`${text}Z`);
  return Number.isNaN(wallMs) ? null : instantOfWallMs(wallMs, zone);
}
