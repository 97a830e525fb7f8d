'use client';

import { useMemo, useState } from 'react';
import { exotherm, massWarnings } from '@/lib/cure/exotherm';
import { potLife } from '@/lib/cure/pot-life';
import { durationText } from '@/lib/units/format-duration';
import { massText, temperatureText } from '@/lib/units/format-quantity';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import { Caution } from '../_ui/caution';
import { FieldFrame } from '../_ui/field';
import { inputClass } from '../_ui/input-class';
import { ActionDialog, BenchForm, type ReadyAction } from './action-dialog';
import { type BatchRef, type MixMaterial, useBenchWorld } from './bench-context';
import { newClientKey } from './client-key';
import { TypedField } from './typed-field';
import { readTyped, typedMass, typedTemperature } from './typed-quantity';
import { WhenField } from './when-field';

export interface MixButtonProps {
  readonly batch: BatchRef;
  readonly operationId: string;
  readonly operationName: string;
  /** The material the route names. */
  readonly materialId: string | null;
  readonly isMain?: boolean;
}

/** Starts a mix: everything filled in as it probably is, one touch to open and one to start. */
export function MixButton(props: MixButtonProps) {
  const { materials } = useBenchWorld();
  if (materials.length === 0) {
    return <p className="text-sm">No adhesive has data sheet figures yet. Enter them in Stock first.</p>;
  }
  return (
    <ActionDialog
      label="Start a mix"
      weight={props.isMain === true ? 'primary' : 'plain'}
      title={`Mix for ${props.operationName}, batch ${props.batch.number}`}
    >
      {(close) => <MixForm {...props} onSent={close} />}
    </ActionDialog>
  );
}

/** Mass in the cup when nothing was mixed before, g. Chosen: a small cup that scales still weigh well. */
const FIRST_MASS_G = 10;

function MixForm({ batch, operationId, materialId, onSent }: MixButtonProps & { readonly onSent: () => void }) {
  const world = useBenchWorld();
  const { materials, massUnit, temperatureUnit, room } = world;
  const planned = materials.find((material) => material.id === materialId) ?? materials[0];
  const [chosenId, setChosenId] = useState(planned?.id ?? '');
  const material = materials.find((candidate) => candidate.id === chosenId);
  const [mass, setMass] = useState(typedMass(planned?.lastMassG ?? FIRST_MASS_G, massUnit));
  const [temperature, setTemperature] = useState(typedTemperature(room.temperatureC, temperatureUnit));
  const [lotIds, setLotIds] = useState<readonly string[]>(planned?.lastLotIds ?? []);
  const [at, setAt] = useState<Instant | null>(null);
  const [isTried, setTried] = useState(false);

  const typedMassG = readTyped('mass', mass, massUnit, massUnit === 'g' ? '9.5' : '.32');
  const massG: typeof typedMassG =
    typedMassG.ok && typedMassG.value === 0 ? { ok: false, error: 'A mix weighs more than nothing.' } : typedMassG;
  const temperatureC = readTyped('temperature', temperature, temperatureUnit, temperatureUnit === 'C' ? '21' : '70');
  const errorOf = (typed: typeof massG) => (isTried && !typed.ok ? typed.error : undefined);

  function choose(id: string) {
    const next = materials.find((candidate) => candidate.id === id);
    setChosenId(id);
    setLotIds(next?.lastLotIds ?? []);
    if (next?.lastMassG != null) setMass(typedMass(next.lastMassG, massUnit));
  }

  function ready(): ReadyAction | null {
    setTried(true);
    if (!massG.ok || !temperatureC.ok || material === undefined) return null;
    return {
      label: `mix of ${massText(massG.value, massUnit)} ${material.name}`,
      at,
      action: {
        kind: 'mix-started',
        mixId: newClientKey(),
        operationId,
        materialId: material.id,
        massG: massG.value,
        temperatureC: temperatureC.value,
        lotIds,
      },
    };
  }

  return (
    <BenchForm batch={batch} submitLabel="Start the mix now" ready={ready} onSent={onSent}>
      <FieldFrame id="mix-material" label="What is mixed" error={undefined}>
        <select
          id="mix-material"
          className={inputClass}
          value={chosenId}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          {materials.map(({ id, name }) => (
            <option key={id} value={id}>
              {id === materialId ? `${name} (as the route says)` : name}
            </option>
          ))}
        </select>
      </FieldFrame>
      <div className="grid grid-cols-2 gap-4">
        <TypedField label="Mass in the cup" unit={massUnit} value={mass} onChange={setMass} error={errorOf(massG)} />
        <TypedField
          label="Warmer of room and parts"
          unit={`°${temperatureUnit}`}
          value={temperature}
          onChange={setTemperature}
          error={errorOf(temperatureC)}
        />
      </div>
      <p className="-mt-3 text-sm text-ink-soft">{room.source}</p>
      {material !== undefined && massG.ok && temperatureC.ok && (
        <Forecast material={material} massG={massG.value} temperatureC={temperatureC.value} />
      )}
      {material !== undefined && <Lots material={material} lotIds={lotIds} onChange={setLotIds} />}
      <WhenField at={at} onChange={setAt} />
      <Caution topic="epoxy" />
    </BenchForm>
  );
}

/** What this cup will do, with the very function the server uses. */
function Forecast(props: { readonly material: MixMaterial; readonly massG: number; readonly temperatureC: number }) {
  const { material, massG, temperatureC } = props;
  const { massUnit, temperatureUnit, room } = useBenchWorld();
  const heat = useMemo(
    () => exotherm(material.sheet, { massG, roomC: room.temperatureC, startC: temperatureC }),
    [material, massG, room, temperatureC],
  );
  const life = useMemo(() => potLife(material.sheet, massG, temperatureC), [material, massG, temperatureC]);
  const warnings = massWarnings(material.sheet, massG);
  return (
    <div className="grid gap-3">
      <p aria-live="polite">
        {life.ok ? (
          <>
            Use it within <strong>{durationText(life.lowerMinutes * MINUTE_MS)}</strong> of mixing; about{' '}
            {durationText(life.centralMinutes * MINUTE_MS)} is likely
            {life.isExtrapolated ? ', far from what the sheet was tested at' : ''}.
          </>
        ) : life.code === 'no-pot-life' ? (
          'Its data sheet gives no pot life: no countdown.'
        ) : (
          'The pot lives of its data sheet contradict each other: no countdown. Look at the sheet in Stock.'
        )}
      </p>
      {temperatureC < material.sheet.minCureC && (
        <p className="border-l-4 border-accent pl-3 font-semibold">
          Colder than the {temperatureText(material.sheet.minCureC, temperatureUnit)} below which it is not counted as
          curing: its clocks stand still until the shop is warmer.
        </p>
      )}
      {warnings.map((warning) => (
        <p key={warning.code} className="border-l-4 border-accent pl-3 font-semibold">
          {massWarningText(warning.code, massText(warning.limitG, massUnit))}
        </p>
      ))}
      {heat.ok && (heat.level === 'hot' || heat.level === 'smoking') && (
        <p className="text-sm">
          Left standing in a compact cup it can heat itself to as much as{' '}
          <strong>{temperatureText(heat.peakC, temperatureUnit)}</strong>, an upper bound. Use it soon or spread it out.
        </p>
      )}
      {warnings.length > 0 && <Caution topic="heat" />}
    </div>
  );
}

function massWarningText(code: ReturnType<typeof massWarnings>[number]['code'], limit: string): string {
  switch (code) {
    case 'above-sheet-maximum':
      return `More than the ${limit} its data sheet allows in one cup. Make two mixes.`;
    case 'above-tested-mass':
      return `More than the ${limit} its pot life was tested with: spread it out in a flat dish.`;
    case 'large-for-its-speed':
      return `Cups above ${limit} of such a glue have been seen to overheat.`;
  }
}

interface LotsProps {
  readonly material: MixMaterial;
  readonly lotIds: readonly string[];
  readonly onChange: (lotIds: readonly string[]) => void;
}

function Lots({ material, lotIds, onChange }: LotsProps) {
  if (material.lots.length === 0) return null;
  return (
    <fieldset className="grid gap-1">
      <legend className="font-semibold">
        From which lots <span className="font-normal text-ink-soft">(optional)</span>
      </legend>
      <div className="flex flex-wrap gap-x-5">
        {material.lots.map((lot) => (
          <label key={lot.id} className="flex min-h-touch items-center gap-2.5">
            <input
              type="checkbox"
              className="size-6 accent-ink"
              checked={lotIds.includes(lot.id)}
              onChange={(event) =>
                onChange(event.currentTarget.checked ? [...lotIds, lot.id] : lotIds.filter((id) => id !== lot.id))
              }
            />
            {lot.label}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
