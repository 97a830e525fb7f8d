'use client';

import { buttonClass } from '@/app/_ui/button-class';
import { QuantityField, TextField } from '@/app/_ui/field';
import { RowFrame, useRows } from '@/app/_ui/rows';
import { SelectField, type SelectOption } from '@/app/_ui/select-field';
import { ANCHOR_KIND_WORDS, ROLE_WORDS } from '@/app/models/_components/words';

/** An anchor as the form's text. */
export interface AnchorText {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  readonly kind: string;
  readonly x: string;
  readonly angle: string;
  readonly wireMaterialId: string;
  readonly wireDiameter: string;
  readonly bitDiameter: string;
  readonly drillDepth: string;
  readonly embedment: string;
  readonly adhesiveMaterialId: string;
  readonly hookMaterialId: string;
  readonly splitRingMaterialId: string;
}

export interface AnchorRowsProps {
  readonly anchors: readonly AnchorText[];
  readonly unit: string;
  readonly wires: readonly SelectOption[];
  readonly adhesives: readonly SelectOption[];
  readonly hooks: readonly SelectOption[];
  readonly splitRings: readonly SelectOption[];
}

const ROLES = Object.entries(ROLE_WORDS).map(([value, label]) => ({ value, label }));
const KINDS = Object.entries(ANCHOR_KIND_WORDS).map(([value, label]) => ({ value, label }));

const NEW_ANCHOR: AnchorText = {
  id: '',
  name: '',
  role: 'belly-hanger',
  kind: 'twisted-wire',
  x: '',
  angle: '',
  wireMaterialId: '',
  wireDiameter: '',
  bitDiameter: '',
  drillDepth: '',
  embedment: '',
  adhesiveMaterialId: '',
  hookMaterialId: '',
  splitRingMaterialId: '',
};

/** The anchors of a model as rows. A new one takes over wire, hole and glue of the one before it. */
export function AnchorRows(props: AnchorRowsProps) {
  const list = useRows(props.anchors);
  const addLikeLast = () => {
    const last = list.rows.at(-1)?.start ?? NEW_ANCHOR;
    list.add({ ...last, id: '', name: '', x: '', role: list.rows.length === 0 ? 'line-tie' : 'belly-hanger' });
  };
  return (
    <div className="grid gap-4">
      {list.rows.map((row, index) => (
        <RowFrame key={row.key} list={list} index={index} title={`Anchor ${index + 1}`}>
          <AnchorFields {...props} anchor={row.start} path={`anchors.${index}`} />
        </RowFrame>
      ))}
      {list.rows.length === 0 && <p className="text-ink-soft">No anchors yet. Begin with the line tie.</p>}
      <div>
        <button type="button" className={buttonClass('plain')} onClick={addLikeLast}>
          Add an anchor
        </button>
      </div>
    </div>
  );
}

interface AnchorFieldsProps extends AnchorRowsProps {
  readonly anchor: AnchorText;
  readonly path: string;
}

function AnchorFields({ anchor, path, unit, wires, adhesives, hooks, splitRings }: AnchorFieldsProps) {
  const quantity = (name: 'x' | 'wireDiameter' | 'bitDiameter' | 'drillDepth' | 'embedment', label: string) => (
    <QuantityField name={`${path}.${name}`} label={label} unit={unit} isOptional defaultValue={anchor[name]} />
  );
  const choice = (
    name: 'wireMaterialId' | 'adhesiveMaterialId' | 'hookMaterialId' | 'splitRingMaterialId',
    label: string,
    options: readonly SelectOption[],
  ) => (
    <SelectField
      name={`${path}.${name}`}
      label={label}
      isOptional
      emptyLabel="none chosen"
      options={options}
      defaultValue={anchor[name]}
    />
  );
  return (
    <>
      <input type="hidden" name={`${path}.id`} value={anchor.id} />
      <div className="grid gap-4 sm:grid-cols-3">
        <TextField name={`${path}.name`} label="Name" maxLength={60} defaultValue={anchor.name} />
        <SelectField name={`${path}.role`} label="Role" options={ROLES} defaultValue={anchor.role} />
        <SelectField name={`${path}.kind`} label="Kind" options={KINDS} defaultValue={anchor.kind} />
      </div>
      <div className="grid grid-cols-2 gap-4 lg:grid-cols-6">
        {quantity('x', 'From the nose')}
        <TextField
          name={`${path}.angle`}
          label="Angle, degrees"
          hint="0 along the body, 90 across it."
          inputMode="decimal"
          isOptional
          maxLength={5}
          defaultValue={anchor.angle}
        />
        {quantity('wireDiameter', 'Wire')}
        {quantity('bitDiameter', 'Bit')}
        {quantity('drillDepth', 'Drill depth')}
        {quantity('embedment', 'Embedment')}
      </div>
      <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
        {choice('wireMaterialId', 'Wire or eye', wires)}
        {choice('adhesiveMaterialId', 'Adhesive', adhesives)}
        {choice('hookMaterialId', 'Hook', hooks)}
        {choice('splitRingMaterialId', 'Split ring', splitRings)}
      </div>
    </>
  );
}
