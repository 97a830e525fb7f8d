import { momentInput } from '@/app/_server/wall-moment';
import { ActionForm } from '@/app/_ui/action-form';
import { DialogButton } from '@/app/_ui/dialog-button';
import { TextField } from '@/app/_ui/field';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { type Column, Table } from '@/app/_ui/table';
import { dateClockText } from '@/lib/units/format-instant';
import { db } from '@/prisma/client';
import { type BatchMixChoice, findMixPieces, listBatchMixChoices } from '@/prisma/data/batch-mixes';
import type { PullSeries, SeriesMix } from '@/prisma/data/pull-series';
import type { ShopSettings } from '@/prisma/data/shop';
import { savePullMixAction } from '../actions';

/** Newest mixes of batches that are offered. Chosen: a month of a busy bench. */
const OFFERED_MIXES = 40;

/** The mixes of a series with their hours, and the form to write them down. */
export async function MixHours({ series, shop }: { readonly series: PullSeries; readonly shop: ShopSettings }) {
  const database = await db();
  const glues = [...new Set(series.mixes.flatMap(({ adhesiveMaterialId }) => adhesiveMaterialId ?? []))];
  const offered = glues.length === 0 ? [] : await listBatchMixChoices(database, glues, OFFERED_MIXES);
  const named = await findMixPieces(
    database,
    series.mixes.flatMap(({ batchMixId }) => batchMixId ?? []),
  );
  const { timeZone } = shop;
  const when = (at: number | null) => (at === null ? 'not written down' : dateClockText(at, timeZone));
  const batchText = (mix: SeriesMix) => {
    const batch = named.get(mix.batchMixId ?? '');
    return batch === undefined ? '–' : `mix ${batch.number} of batch ${batch.batchNumber}`;
  };
  const columns: readonly Column<SeriesMix>[] = [
    { id: 'name', title: 'Mix', cell: (mix) => mix.name },
    { id: 'mixed', title: 'Mixed', cell: (mix) => when(mix.mixedAt) },
    { id: 'set', title: 'Last one set', cell: (mix) => when(mix.setAt ?? mix.mixedAt) },
    { id: 'lot', title: 'Lot', cell: (mix) => mix.adhesiveLotCode || '–' },
    { id: 'batch', title: 'Same cup as', cell: batchText },
    { id: 'note', title: 'Note', isLong: true, cell: (mix) => mix.note || '–' },
  ];
  const change: Column<SeriesMix> = {
    id: 'change',
    title: 'Change',
    cell: (mix) => (
      <DialogButton label="Hours" title={`Mix ${mix.name}`}>
        <MixForm seriesId={series.id} mix={mix} offered={offered} timeZone={timeZone} />
      </DialogButton>
    ),
  };
  return (
    <Table
      caption="Mixes"
      columns={series.kind === 'acceptance' || series.isClosed ? columns : [...columns, change]}
      rows={series.mixes}
      rowKey={(mix) => mix.id}
    />
  );
}

interface MixFormProps {
  readonly seriesId: string;
  readonly mix: SeriesMix;
  readonly offered: readonly BatchMixChoice[];
  readonly timeZone: string;
}

function MixForm({ seriesId, mix, offered, timeZone }: MixFormProps) {
  return (
    <ActionForm action={savePullMixAction.bind(null, seriesId, mix.id)}>
      <TextField
        name="mixedAt"
        label="Mixed"
        type="datetime-local"
        isOptional
        defaultValue={momentInput(mix.mixedAt, timeZone)}
      />
      <TextField
        name="setAt"
        label="Last specimen set"
        type="datetime-local"
        isOptional
        defaultValue={momentInput(mix.setAt, timeZone)}
      />
      <SelectField
        name="batchMixId"
        label="Same cup as"
        hint="When the specimens were set from the cup of a batch, its hour of mixing counts, and what the pulls say is said of its pieces."
        isOptional
        emptyLabel="a cup of its own"
        defaultValue={mix.batchMixId ?? ''}
        options={offered.map(({ id, number, batchNumber, mixedAt }) => ({
          value: id,
          label: `Mix ${number} of batch ${batchNumber}, ${dateClockText(mixedAt, timeZone)}`,
        }))}
      />
      <TextField
        name="adhesiveLotCode"
        label="Lot of the glue"
        isOptional
        maxLength={60}
        defaultValue={mix.adhesiveLotCode}
      />
      <TextField name="note" label="Note" isOptional maxLength={500} defaultValue={mix.note} />
      <div>
        <SubmitButton>Save</SubmitButton>
      </div>
    </ActionForm>
  );
}
