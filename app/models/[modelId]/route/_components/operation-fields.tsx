'use client';

import { useState } from 'react';
import { CAUTION_WORDS } from '@/app/_ui/caution-words';
import { CheckField } from '@/app/_ui/choice-field';
import { TextField } from '@/app/_ui/field';
import { SelectField, type SelectOption } from '@/app/_ui/select-field';
import { OPERATION_WORDS } from '@/app/models/_components/words';
import type { OperationKind, Wait } from '@/lib/batch/plan';
import { NeedRows } from './need-rows';

/** An operation as the form's text. */
export interface OperationText {
  /** Its id, or a name made here for one that is new. */
  readonly ref: string;
  readonly name: string;
  readonly kind: OperationKind;
  readonly minutes: string;
  readonly materialId: string;
  readonly anchorIds: readonly string[];
  readonly caution: string;
  readonly needs: readonly { readonly after: string; readonly wait: Wait }[];
}

const KINDS = Object.entries(OPERATION_WORDS).map(([value, label]) => ({ value, label }));
const CAUTIONS = [
  { value: 'none', label: 'none' },
  ...Object.entries(CAUTION_WORDS).map(([value, { title }]) => ({ value, label: title })),
];

export interface OperationFieldsProps {
  readonly operation: OperationText;
  readonly path: string;
  /** The steps it may wait for. */
  readonly above: readonly SelectOption[];
  readonly adhesives: readonly SelectOption[];
  readonly anchors: readonly SelectOption[];
  readonly onName: (name: string) => void;
}

/** The fields of one step; what a glue-up or a coat needs is asked of these only. */
export function OperationFields({ operation, path, above, adhesives, anchors, onName }: OperationFieldsProps) {
  const [kind, setKind] = useState<string>(operation.kind);
  return (
    <>
      <input type="hidden" name={`${path}.ref`} value={operation.ref} />
      <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-[2fr_1fr_1fr_1fr]">
        <TextField
          name={`${path}.name`}
          label="What is done"
          maxLength={80}
          defaultValue={operation.name}
          onType={onName}
        />
        <SelectField
          name={`${path}.kind`}
          label="Kind"
          options={KINDS}
          defaultValue={operation.kind}
          onPick={setKind}
        />
        <TextField
          name={`${path}.minutes`}
          label="Minutes a piece"
          inputMode="decimal"
          maxLength={7}
          defaultValue={operation.minutes}
        />
        <SelectField name={`${path}.caution`} label="Caution" options={CAUTIONS} defaultValue={operation.caution} />
      </div>
      {kind === 'work' ? (
        <input type="hidden" name={`${path}.materialId`} value="" />
      ) : (
        <SelectField
          name={`${path}.materialId`}
          label={kind === 'glue' ? 'Adhesive' : 'Coating'}
          hint="Its data sheet gives the hours."
          emptyLabel="choose"
          options={adhesives}
          defaultValue={operation.materialId}
        />
      )}
      {kind === 'glue' && anchors.length > 0 && (
        <fieldset className="grid gap-1">
          <legend className="font-semibold">Anchors it sets</legend>
          <p className="text-sm text-ink-soft">None ticked: all of them.</p>
          <div className="flex flex-wrap gap-x-6">
            {anchors.map((anchor) => (
              <CheckField
                key={anchor.value}
                name={`${path}.anchorIds[]`}
                value={anchor.value}
                label={anchor.label}
                defaultChecked={operation.anchorIds.includes(anchor.value)}
              />
            ))}
          </div>
        </fieldset>
      )}
      <NeedRows needs={operation.needs} path={`${path}.needs`} above={above} />
    </>
  );
}
