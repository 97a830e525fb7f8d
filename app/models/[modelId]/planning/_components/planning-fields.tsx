import { TextField } from '@/app/_ui/field';
import { SelectField, type SelectOption } from '@/app/_ui/select-field';
import { MILESTONE_WORDS } from '@/app/stock/_components/words';
import { HOLD_ENDS } from '@/lib/contracts/planning-forms';
import { plainDecimals } from '@/lib/units/quantity-input';
import type { OperationPlanning } from '@/prisma/data/operation-planning';
import type { RevisionOperation } from '@/prisma/data/revisions';

export interface PlanningFieldsProps {
  readonly operation: RevisionOperation;
  readonly path: string;
  readonly planning: OperationPlanning | undefined;
  readonly people: readonly SelectOption[];
  readonly resources: readonly SelectOption[];
}

/** What the plan asks of one step: only what its kind can have. */
export function PlanningFields({ operation, path, planning, people, resources }: PlanningFieldsProps) {
  const { kind, name, needs } = operation;
  const number = (value: number | null | undefined) => (value == null ? undefined : plainDecimals(value));
  const isRecoat = needs.some(({ wait }) => wait === 'recoat');
  const holds = HOLD_ENDS.filter((end) => kind !== 'work' || end === 'attended');
  return (
    <fieldset className="grid gap-4 rounded-sheet border border-line-strong bg-sheet p-4">
      <legend className="px-1 font-bold">
        {operation.position}. {name}
      </legend>
      <input type="hidden" name={`${path}.operationId`} value={operation.id} />
      <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
        <TextField
          name={`${path}.setUpMinutes`}
          label="Set-up, minutes"
          hint="Shared by what is alike in a session."
          inputMode="decimal"
          maxLength={6}
          defaultValue={number(planning?.setUpMinutes ?? 0)}
        />
        <SelectField name={`${path}.by`} label="Who may do it" options={people} defaultValue={byOf(planning)} />
        <TextField
          name={`${path}.mostPieces`}
          label="Most pieces at once"
          hint={kind === 'work' ? 'In one visit.' : 'In one mix; empty: what its pot life allows.'}
          inputMode="numeric"
          maxLength={3}
          isOptional
          defaultValue={number(planning?.mostPieces)}
        />
        {kind === 'work' ? (
          <TextField
            name={`${path}.leastPieceMinutes`}
            label="May be put down after"
            hint="Minutes; empty: done in one go."
            inputMode="decimal"
            maxLength={6}
            isOptional
            defaultValue={planning === undefined ? '30' : number(planning.leastPieceMinutes)}
          />
        ) : (
          <input type="hidden" name={`${path}.leastPieceMinutes`} value="" />
        )}
        <SelectField
          name={`${path}.resourceId`}
          label="Takes places on"
          emptyLabel="nothing"
          isOptional
          options={resources}
          defaultValue={planning?.resourceId ?? ''}
        />
        <SelectField
          name={`${path}.resourceShare`}
          label="One place for"
          options={[
            { value: 'piece', label: 'each piece' },
            { value: 'visit', label: 'the whole visit' },
          ]}
          defaultValue={planning?.resourceShare}
        />
        <SelectField
          name={`${path}.holdsUntil`}
          label="Held until"
          options={holds.map((end) => ({
            value: end,
            label: end === 'attended' ? 'the visit ends' : MILESTONE_WORDS[end],
          }))}
          defaultValue={planning?.holdsUntil}
        />
        <TextField
          name={`${path}.spoiltPercent`}
          label="Spoilt here, %"
          hint="Of the pieces that come to it, for Cost."
          inputMode="decimal"
          maxLength={5}
          isOptional
          defaultValue={number(planning?.spoiltPercent)}
        />
        {isRecoat ? (
          <TextField
            name={`${path}.remedyMinutes`}
            label="Window missed: minutes a piece"
            hint="To wash and sand; empty: it must be met."
            inputMode="decimal"
            maxLength={6}
            isOptional
            defaultValue={number(planning?.remedyMinutes)}
          />
        ) : (
          <input type="hidden" name={`${path}.remedyMinutes`} value="" />
        )}
      </div>
    </fieldset>
  );
}

function byOf(planning: OperationPlanning | undefined): string {
  if (planning === undefined) return 'anyone';
  if (planning.personId !== null) return `person:${planning.personId}`;
  return planning.skill === null ? 'anyone' : `skill:${planning.skill}`;
}
