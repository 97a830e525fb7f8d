'use client';

import { useState } from 'react';
import { dewPointCheck, LEAST_DEW_POINT_MARGIN_C } from '@/lib/cure/dew-point';
import { temperatureDifferenceText, temperatureText } from '@/lib/units/format-quantity';
import type { Instant } from '@/lib/units/instant';
import { readNumber } from '@/lib/units/read-number';
import { Caution } from '../_ui/caution';
import { ActionDialog, BenchForm, type ReadyAction } from './action-dialog';
import { type BatchRef, useBenchWorld } from './bench-context';
import { firstPieces, PiecePicker } from './piece-picker';
import { TypedField } from './typed-field';
import { readTyped, typedTemperature } from './typed-quantity';
import { WhenField } from './when-field';

export interface CoatButtonProps {
  readonly batch: BatchRef;
  readonly mixId: string;
  readonly mixNumber: number;
  readonly operationName: string;
  readonly pieces: readonly number[];
}

/** Spreads a running mix on pieces, with the dew point looked at first where the humidity is known. */
export function CoatButton(props: CoatButtonProps) {
  return (
    <ActionDialog
      label="Apply"
      weight="primary"
      title={`${props.operationName} with mix ${props.mixNumber}, batch ${props.batch.number}`}
    >
      {(close) => <CoatForm {...props} onSent={close} />}
    </ActionDialog>
  );
}

/** A field that may stay empty: undefined then. */
type Optional =
  | { readonly ok: true; readonly value: number | undefined }
  | { readonly ok: false; readonly error: string };

function CoatForm({
  batch,
  mixId,
  mixNumber,
  operationName,
  pieces,
  onSent,
}: CoatButtonProps & { readonly onSent: () => void }) {
  const { room, temperatureUnit } = useBenchWorld();
  const pickable = pieces.map((number) => ({ number }));
  const [picked, setPicked] = useState(firstPieces(pickable, pickable.length));
  const [air, setAir] = useState(typedTemperature(room.temperatureC, temperatureUnit));
  const [surface, setSurface] = useState(typedTemperature(room.temperatureC, temperatureUnit));
  const [humidity, setHumidity] = useState(room.humidityPct === null ? '' : String(Math.round(room.humidityPct)));
  const [at, setAt] = useState<Instant | null>(null);
  const [isTried, setTried] = useState(false);

  const degrees = (text: string): Optional =>
    text.trim() === '' ? { ok: true, value: undefined } : readTyped('temperature', text, temperatureUnit, '21');
  const airC = degrees(air);
  const surfaceC = degrees(surface);
  const humidityPct = readHumidity(humidity);
  const errorOf = (typed: Optional) => (isTried && !typed.ok ? typed.error : undefined);

  function ready(): ReadyAction | null {
    setTried(true);
    const numbers = pieces.filter((number) => picked.has(number));
    if (numbers.length === 0 || !airC.ok || !surfaceC.ok || !humidityPct.ok) return null;
    return {
      label: `${operationName} on ${numbers.length} ${numbers.length === 1 ? 'piece' : 'pieces'} with mix ${mixNumber}`,
      at,
      action: {
        kind: 'coat-applied',
        mixId,
        pieces: numbers,
        ...(airC.value === undefined ? {} : { airC: airC.value }),
        ...(surfaceC.value === undefined ? {} : { surfaceC: surfaceC.value }),
        ...(humidityPct.value === undefined ? {} : { humidityPct: humidityPct.value }),
      },
    };
  }

  return (
    <BenchForm
      batch={batch}
      submitLabel={`Applied to ${picked.size} ${picked.size === 1 ? 'piece' : 'pieces'}`}
      ready={ready}
      onSent={onSent}
    >
      <DewPoint
        airC={airC.ok ? airC.value : undefined}
        surfaceC={surfaceC.ok ? surfaceC.value : undefined}
        humidityPct={humidityPct.ok ? humidityPct.value : undefined}
      />
      <PiecePicker
        legend="Pieces"
        pieces={pickable}
        picked={picked}
        onPick={setPicked}
        error={isTried && picked.size === 0 ? 'Pick at least one piece.' : undefined}
      />
      <div className="grid grid-cols-3 gap-3">
        <TypedField label="Air" unit={`°${temperatureUnit}`} value={air} onChange={setAir} error={errorOf(airC)} />
        <TypedField
          label="Surface"
          unit={`°${temperatureUnit}`}
          value={surface}
          onChange={setSurface}
          error={errorOf(surfaceC)}
        />
        <TypedField label="Humidity" unit="%" value={humidity} onChange={setHumidity} error={errorOf(humidityPct)} />
      </div>
      <p className="-mt-3 text-sm text-ink-soft">{room.source} Leave empty what you do not know.</p>
      <WhenField at={at} onChange={setAt} />
      <Caution topic="epoxy" />
    </BenchForm>
  );
}

function readHumidity(text: string): Optional {
  if (text.trim() === '') return { ok: true, value: undefined };
  const read = readNumber(text.replace('%', ''));
  if (!read.ok || read.value < 0 || read.value > 100) return { ok: false, error: 'Write 0 to 100.' };
  return { ok: true, value: read.value };
}

interface Conditions {
  readonly airC: number | undefined;
  readonly surfaceC: number | undefined;
  readonly humidityPct: number | undefined;
}

/** Whether water would settle on the surface; advice, never a lock. */
function DewPoint({ airC, surfaceC, humidityPct }: Conditions) {
  const { temperatureUnit } = useBenchWorld();
  const check = dewPointCheck({
    ...(airC === undefined ? {} : { airC }),
    ...(surfaceC === undefined ? {} : { surfaceC }),
    ...(humidityPct === undefined ? {} : { humidityPct }),
  });
  const least = temperatureDifferenceText(LEAST_DEW_POINT_MARGIN_C, temperatureUnit);
  if (check.kind === 'not-judged') {
    return (
      <p aria-live="polite" className="text-sm text-ink-soft">
        Dew point not judged: the humidity and both temperatures are needed for it.
      </p>
    );
  }
  const dewPoint = temperatureText(check.dewPointC, temperatureUnit);
  const margin = temperatureDifferenceText(check.marginC, temperatureUnit);
  return check.kind === 'ok' ? (
    <p aria-live="polite">
      Dew point {dewPoint}: the surface is <strong>{margin}</strong> above it, at least {least} is asked for.
    </p>
  ) : (
    <p aria-live="polite" className="border-l-4 border-accent bg-accent-soft px-4 py-3 font-semibold">
      Too close to the dew point of {dewPoint}: the surface is {margin} above it, at least {least} is asked for (ISO
      8502-4). Water may settle under the coat. Warm the pieces or dry the air first.
    </p>
  );
}
