import { ButtonLink } from '@/app/_ui/button-link';
import { EmptyState } from '@/app/_ui/empty-state';
import { type Column, Table } from '@/app/_ui/table';
import {
  STRENGTH_FIELDS,
  type StrengthField,
  type StrengthValues,
  strengthSources,
  strengthValues,
} from '@/app/stock/_components/strength-figures';
import { shownUnit } from '@/app/stock/_components/strength-unit';
import { figureSourceText } from '@/app/stock/_components/words';
import { OWN_FIGURE } from '@/lib/materials/figure-source';
import { quantityText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { Material } from '@/prisma/data/materials';

export interface StrengthViewProps {
  readonly material: Material;
  readonly units: UnitChoice;
}

/** What is known of a material's strength, each figure with its source or marked as the shop's own. */
export function StrengthView({ material, units }: StrengthViewProps) {
  const { strength } = material;
  if (strength === null) {
    return (
      <EmptyState
        title="No figures of strength yet"
        action={
          <ButtonLink href={`/stock/${material.id}/strength`} weight="primary">
            Enter the figures
          </ButtonLink>
        }
      >
        <p>Until then nothing that rests on it is judged: unknown is never taken for strong enough.</p>
      </EmptyState>
    );
  }
  const values = strengthValues(strength);
  const sources = strengthSources(strength);
  const columns: Column<StrengthField>[] = [
    { id: 'figure', title: 'Figure', cell: (field) => field.label },
    { id: 'value', title: 'Value', cell: (field) => shownValue(field, values, units) },
    {
      id: 'source',
      title: 'Source',
      cell: (field) =>
        field.field !== 'tick' && field.hasSource === true ? (
          <span className="text-sm">{figureSourceText(sources[field.name] ?? OWN_FIGURE)}</span>
        ) : (
          ''
        ),
      isLong: true,
    },
  ];
  const known = STRENGTH_FIELDS[strength.kind].filter(({ name }) => values[name] !== undefined && values[name] !== '');
  return <Table caption="Figures of strength" columns={columns} rows={known} rowKey={(field) => field.name} />;
}

function shownValue(field: StrengthField, values: StrengthValues, units: UnitChoice): string {
  const value = values[field.name];
  switch (field.field) {
    case 'tick':
      return value === true ? 'yes' : 'no';
    case 'word':
      return field.words.find((word) => word.value === value)?.label ?? 'not said';
    case 'figure':
      return typeof value === 'number' ? quantityText({ value, unit: shownUnit(field.unit) }, units) : 'not said';
  }
}
