import { type BodyKind, bodyShape } from '@/lib/geometry/body-shapes';
import { lengthIn } from '@/lib/units/convert';
import { plainDecimals } from '@/lib/units/quantity-input';
import { readQuantity } from '@/lib/units/read-quantity';
import type { LengthUnit } from '@/lib/units/unit-choice';
import type { PastedStation } from './pasted-stations';

/** Enough for a smooth outline, few enough to change by hand. */
const STATIONS = 17;
const GREATEST_MM = 1_000;

export interface TypedShape {
  readonly kind: BodyKind;
  readonly length: string;
  readonly height: string;
  readonly width: string;
}

export type ShapedStations =
  | { readonly ok: true; readonly stations: readonly PastedStation[] }
  | { readonly ok: false; readonly field: 'length' | 'height' | 'width' };

/** Stations of a kind of body as text in the shop's unit: nose and tail exactly where the typed length has them. */
export function shapedStations({ kind, length, height, width }: TypedShape, unit: LengthUnit): ShapedStations {
  const lengthMm = sizeOf(length, unit);
  const heightMm = sizeOf(height, unit);
  const widthMm = sizeOf(width, unit);
  if (lengthMm === null) return { ok: false, field: 'length' };
  if (heightMm === null) return { ok: false, field: 'height' };
  if (widthMm === null) return { ok: false, field: 'width' };
  const shape = bodyShape(kind, { lengthMm, heightMm, widthMm }, STATIONS);
  const stations = shape.map(({ xMm, halfHeightMm, halfWidthMm }, index) => ({
    x: index === 0 ? '0' : index === shape.length - 1 ? length.trim() : sizeText(xMm, unit),
    height: sizeText(2 * halfHeightMm, unit),
    width: sizeText(2 * halfWidthMm, unit),
  }));
  return { ok: true, stations };
}

function sizeOf(text: string, unit: LengthUnit): number | null {
  const reading = readQuantity('length', text, unit === 'inch' ? 'in' : 'mm');
  return reading.ok && reading.value > 0 && reading.value <= GREATEST_MM ? reading.value : null;
}

/** Hundredths of a millimetre or thousandths of an inch: finer than calipers read. */
function sizeText(mm: number, unit: LengthUnit): string {
  const size = lengthIn(unit, mm);
  return plainDecimals(Number(size.toFixed(unit === 'inch' ? 3 : 2)));
}
