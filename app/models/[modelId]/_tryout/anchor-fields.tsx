'use client';

import { lengthSign } from '@/app/_ui/unit-sign';
import type { Body } from '@/lib/geometry/body';
import type { DragSteps } from '@/lib/geometry/hole-drag';
import { GREATEST_SLANT_DEG } from '@/lib/geometry/shank-path';
import type { SpecAnchor } from '@/lib/spec/spec-model';
import { plainDecimals, signedLengthInput } from '@/lib/units/quantity-input';
import type { LengthUnit } from '@/lib/units/unit-choice';
import { type Grip, nudged, withDepth } from './edits';
import { readDegrees, readLength } from './read-typed';
import { TypedField } from './typed-field';

export interface AnchorFieldsProps {
  readonly anchor: SpecAnchor;
  readonly body: Body;
  readonly steps: DragSteps;
  readonly lengthUnit: LengthUnit;
  readonly onChange: (anchor: SpecAnchor) => void;
}

/** Deepest hole that can be typed, mm: beyond it nothing is estimated anyway. */
const DEEPEST_MM = 300;

/** Depth, place, lean and load of an anchor, typed or stepped. */
export function AnchorFields({ anchor, body, steps, lengthUnit, onChange }: AnchorFieldsProps) {
  const isAcross = anchor.face === 'belly' || anchor.face === 'back';
  const unit = lengthSign(lengthUnit);
  const lengthText = (mm: number) => signedLengthInput(mm, lengthUnit);
  const degreesText = (deg: number) => plainDecimals(Number(deg.toFixed(2)));
  const step = (grip: Grip, keys: readonly [less: string, more: string]) => (way: 1 | -1) =>
    onChange(nudged(anchor, body, grip, way === 1 ? keys[1] : keys[0], steps));
  const highest = Math.max(...body.stations.map(({ halfHeightMm }) => halfHeightMm));
  return (
    <div className="grid gap-4 sm:grid-cols-2">
      {anchor.kind !== 'through-wire' && (
        <TypedField
          label={anchor.kind === 'screw-eye' ? 'Screwed in' : 'Embedment'}
          unit={unit}
          value={anchor.embedmentMm}
          textOf={lengthText}
          read={(text) => readLength(text, lengthUnit, 0.1, DEEPEST_MM)}
          onValue={(mm) => onChange(withDepth(anchor, mm))}
          onStep={step('shank', ['ArrowDown', 'ArrowUp'])}
          stepWords={['Shallower', 'Deeper']}
          {...(anchor.drillDepthMm === null ? {} : { hint: 'The hole is drilled deeper or shallower with it.' })}
        />
      )}
      <TypedField
        label={isAcross ? 'From the nose' : 'Above the middle line'}
        unit={unit}
        value={isAcross ? anchor.xMm : anchor.zMm}
        textOf={lengthText}
        read={(text) =>
          isAcross
            ? readLength(text, lengthUnit, body.noseMm, body.tailMm)
            : readLength(text, lengthUnit, -highest, highest)
        }
        onValue={(mm) => onChange(isAcross ? { ...anchor, xMm: mm } : { ...anchor, zMm: mm })}
        onStep={step('mouth', isAcross ? ['ArrowLeft', 'ArrowRight'] : ['ArrowDown', 'ArrowUp'])}
        stepWords={isAcross ? ['Towards the nose', 'Towards the tail'] : ['Lower', 'Higher']}
      />
      {anchor.kind !== 'through-wire' && (
        <TypedField
          label={isAcross ? 'Lean of the deep end, + to the tail' : 'Lean of the deep end, + to the back'}
          unit="°"
          value={anchor.slantDeg}
          textOf={degreesText}
          read={(text) => readDegrees(text, -GREATEST_SLANT_DEG, GREATEST_SLANT_DEG)}
          onValue={(slantDeg) => onChange({ ...anchor, slantDeg })}
          onStep={step('shank', ['ArrowLeft', 'ArrowRight'])}
          stepWords={['Lean less', 'Lean more']}
        />
      )}
      <TypedField
        label="Load, from the shank"
        unit="°"
        value={anchor.loadAngleDeg}
        textOf={degreesText}
        read={(text) => readDegrees(text, 0, 90)}
        onValue={(loadAngleDeg) => onChange({ ...anchor, loadAngleDeg })}
        onStep={step('load', ['ArrowDown', 'ArrowUp'])}
        stepWords={['Straighter', 'More aslant']}
        hint="0 straight along it, 90 square to it."
      />
    </div>
  );
}
