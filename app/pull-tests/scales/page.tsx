import type { Metadata } from 'next';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { dayText } from '@/app/_ui/day-text';
import { DialogButton } from '@/app/_ui/dialog-button';
import { QuantityField, TextField } from '@/app/_ui/field';
import { Card, Page, Section } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import { type Column, Table } from '@/app/_ui/table';
import { forceIn } from '@/lib/units/convert';
import { forceText } from '@/lib/units/format-quantity';
import { plainDecimals } from '@/lib/units/quantity-input';
import type { ForceUnit } from '@/lib/units/unit-choice';
import { db } from '@/prisma/client';
import { listScales, type Scale } from '@/prisma/data/scales';
import { saveScaleAction } from '../actions';

export const metadata: Metadata = { title: 'Scales' };

export default async function ScalesPage() {
  const { forceUnit } = await currentShop();
  const scales = await listScales(await db());
  return (
    <Page
      title="Scales"
      lead="What pulls are read on. A scale that was never checked, or not for half a year, marks every pull read on it."
      up={{ href: '/pull-tests', label: 'Pull tests' }}
    >
      {scales.length > 0 && (
        <Table caption="Scales" columns={columns(forceUnit)} rows={scales} rowKey={(scale) => scale.id} />
      )}
      <Section title="Add a scale">
        <Card className="max-w-2xl">
          <ScaleForm scale={null} unit={forceUnit} />
        </Card>
      </Section>
    </Page>
  );
}

function columns(unit: ForceUnit): readonly Column<Scale>[] {
  return [
    { id: 'name', title: 'Scale', cell: (scale) => scale.name },
    { id: 'greatest', title: 'Shows at most', isNumber: true, cell: (scale) => forceText(scale.greatestN, unit) },
    {
      id: 'checked',
      title: 'Last checked',
      cell: (scale) => (scale.checkedOn === null ? 'never' : dayText(scale.checkedOn)),
    },
    { id: 'note', title: 'Note', isLong: true, cell: (scale) => scale.note || '–' },
    {
      id: 'change',
      title: 'Change',
      cell: (scale) => (
        <DialogButton label="Change" title={scale.name}>
          <ScaleForm scale={scale} unit={unit} />
        </DialogButton>
      ),
    },
  ];
}

function ScaleForm({ scale, unit }: { readonly scale: Scale | null; readonly unit: ForceUnit }) {
  return (
    <ActionForm action={saveScaleAction.bind(null, scale?.id ?? null)} clearsWhenDone={scale === null}>
      <TextField name="name" label="Name" maxLength={60} defaultValue={scale?.name} />
      <QuantityField
        name="greatest"
        label="Greatest load it can show"
        hint="A pull that reaches it says only that the joint held at least so much."
        unit={unit}
        defaultValue={scale === null ? undefined : plainDecimals(forceIn(unit, scale.greatestN))}
      />
      <TextField
        name="checkedOn"
        label="Last checked on"
        hint="Hang a known weight on it: a full bucket that was weighed, a dumbbell."
        type="date"
        isOptional
        defaultValue={scale?.checkedOn ?? ''}
      />
      <TextField name="note" label="Note" isOptional maxLength={500} defaultValue={scale?.note} />
      <div>
        <SubmitButton>{scale === null ? 'Add the scale' : 'Save'}</SubmitButton>
      </div>
    </ActionForm>
  );
}
