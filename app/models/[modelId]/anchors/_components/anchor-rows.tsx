'use client';

import type { ReactNode } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import { QuantityField, TextField } from '@/app/_ui/field';
import { RowFrame, useRows } from '@/app/_ui/rows';
import { SelectField, type SelectOption } from '@/app/_ui/select-field';
import { ANCHOR_KIND_WORDS, FACE_WORDS, ROLE_WORDS } from '@/app/models/_components/words';

/** An anchor as the form's text. */
export interface AnchorText {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  readonly kind: string;
  readonly face: string;
  readonly x: string;
  readonly z: string;
  readonly angle: string;
  readonly leansTo: string;
  readonly loadAngle: string;
  readonly wireMaterialId: string;
  readonly wireDiameter: string;
  readonly twist: string;
  readonly eyeInside: string;
  readonly eye: string;
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
  /** What a twist is counted in: turns in an inch, or the length of one turn. */
  readonly twistUnit: string;
  readonly wires: readonly SelectOption[];
  readonly adhesives: readonly SelectOption[];
  readonly hooks: readonly SelectOption[];
  readonly splitRings: readonly SelectOption[];
}

const ROLES = Object.entries(ROLE_WORDS).map(([value, label]) => ({ value, label }));
const KINDS = Object.entries(ANCHOR_KIND_WORDS).map(([value, label]) => ({ value, label }));
const FACES = Object.entries(FACE_WORDS).map(([value, label]) => ({ value, label }));
const EYES = [
  { value: 'closed', label: 'closed: wound, welded or brazed shut' },
  { value: 'open', label: 'open' },
];

const NEW_ANCHOR: AnchorText = {
  id: '',
  name: '',
  role: 'belly-hanger',
  kind: 'twisted-wire',
  face: '',
  x: '',
  z: '',
  angle: '',
  leansTo: '',
  loadAngle: '',
  wireMaterialId: '',
  wireDiameter: '',
  twist: '',
  eyeInside: '',
  eye: '',
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

function AnchorFields({ anchor, path, unit, twistUnit, wires, adhesives, hooks, splitRings }: AnchorFieldsProps) {
  const quantity = (name: QuantityName, label: string, hint?: string) => (
    <QuantityField
      name={`${path}.${name}`}
      label={label}
      hint={hint}
      unit={name === 'twist' ? twistUnit : unit}
      isOptional
      defaultValue={anchor[name]}
    />
  );
  const degrees = (name: 'angle' | 'loadAngle', label: string, hint: string) => (
    <TextField
      name={`${path}.${name}`}
      label={label}
      hint={hint}
      inputMode="decimal"
      isOptional
      maxLength={5}
      defaultValue={anchor[name]}
    />
  );
  const choice = (name: ChoiceName, label: string, options: readonly SelectOption[], hint?: string) => (
    <SelectField
      name={`${path}.${name}`}
      label={label}
      hint={hint}
      isOptional
      emptyLabel="not said"
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
      <Part title="Where it sits and how it is pulled">
        {choice('face', 'Drilled from', FACES)}
        {quantity('x', 'From the nose', 'For belly and back.')}
        {quantity('z', 'Above the middle', 'For nose and tail: 0 on the middle line, minus below it.')}
        {degrees('angle', 'Angle, degrees', '0 along the body, 90 square across it.')}
        {choice('leansTo', 'Leans to', FACES, 'Where the deep end of a slanted shank lies.')}
        {degrees('loadAngle', 'Load angle, degrees', 'Between pull and shank: 0 straight, 90 square.')}
      </Part>
      <Part title="Wire and eye">
        {choice('wireMaterialId', 'Wire or screw eye', wires)}
        {quantity('wireDiameter', 'Wire diameter')}
        {quantity('twist', 'Twist', 'Of the wire in the hole.')}
        {quantity('eyeInside', 'Eye inside')}
        {choice('eye', 'Eye', EYES)}
      </Part>
      <Part title="Hole and glue">
        {quantity('bitDiameter', 'Bit')}
        {quantity('drillDepth', 'Drill depth')}
        {quantity('embedment', 'Embedment', 'Shank in glue.')}
        {choice('adhesiveMaterialId', 'Adhesive', adhesives)}
      </Part>
      <Part title="What hangs on it">
        {choice('splitRingMaterialId', 'Split ring', splitRings)}
        {choice('hookMaterialId', 'Hook', hooks)}
      </Part>
    </>
  );
}

type QuantityName = 'x' | 'z' | 'wireDiameter' | 'twist' | 'eyeInside' | 'bitDiameter' | 'drillDepth' | 'embedment';
type ChoiceName =
  | 'face'
  | 'leansTo'
  | 'eye'
  | 'wireMaterialId'
  | 'adhesiveMaterialId'
  | 'hookMaterialId'
  | 'splitRingMaterialId';

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <div className="grid gap-3 border-t border-line pt-3">
      <p className="text-sm font-semibold text-ink-soft">{title}</p>
      <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-3">{children}</div>
    </div>
  );
}
