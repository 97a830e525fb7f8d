'use client';

import { useState } from 'react';
import { CheckField, RadioField } from '@/app/_ui/choice-field';
import { FieldMark } from '@/app/_ui/field';
import { SelectField, type SelectOption } from '@/app/_ui/select-field';
import type { PullFactor } from '@/lib/pulltest/pull-plan';

export interface MaterialFieldsProps {
  readonly woods: readonly SelectOption[];
  readonly adhesives: readonly SelectOption[];
  readonly wires: readonly SelectOption[];
}

const FACTORS: readonly { readonly value: PullFactor; readonly label: string }[] = [
  { value: 'none', label: 'Depth alone' },
  { value: 'wood', label: 'Also woods' },
  { value: 'adhesive', label: 'Also glues' },
  { value: 'wire', label: 'Also wires' },
];

/** What the specimens are made of, and what is compared beside depth. */
export function MaterialFields({ woods, adhesives, wires }: MaterialFieldsProps) {
  const [factor, setFactor] = useState<PullFactor>('none');
  const others = factor === 'wood' ? woods : factor === 'adhesive' ? adhesives : factor === 'wire' ? wires : [];
  return (
    <>
      <div className="grid gap-5 sm:grid-cols-3">
        <SelectField name="woodMaterialId" label="Wood" emptyLabel="not in Stock" options={woods} isOptional />
        <SelectField name="adhesiveMaterialId" label="Glue" emptyLabel="not in Stock" options={adhesives} isOptional />
        <SelectField name="wireMaterialId" label="Wire" emptyLabel="not in Stock" options={wires} isOptional />
      </div>
      <p className="text-sm text-ink-soft">
        Only a series that names all three can be accepted for your models. Without a glue from Stock nobody can tell
        when a specimen may be pulled.
      </p>
      <RadioField
        name="factor"
        legend="Compared"
        options={FACTORS}
        defaultValue="none"
        onPick={(value) => setFactor(FACTORS.find((known) => known.value === value)?.value ?? 'none')}
      />
      {factor !== 'none' && (
        <fieldset className="grid gap-1">
          <legend className="font-semibold">Compared with</legend>
          {others.map((option) => (
            <CheckField key={option.value} name="others[]" value={option.value} label={option.label} />
          ))}
          {others.length === 0 && <p className="text-ink-soft">None in Stock.</p>}
          <FieldMark name="others" />
        </fieldset>
      )}
    </>
  );
}
