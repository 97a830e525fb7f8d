import { type BodyKind, bodyShape } from '@/lib/geometry/body-shapes';
import { readQuantity } from '@/lib/units/read-quantity';
import type { LengthUnit } from '@/lib/units/unit-choice';

export interface ShapePreviewProps {
  readonly kind: BodyKind;
  readonly height: string;
  readonly width: string;
  readonly lengthUnit: LengthUnit;
}

/** Proportions drawn until heights are typed: a quarter of the length high, a fifth wide. Chosen. */
const LENGTH_MM = 80;
const HEIGHT_MM = 20;
const WIDTH_MM = 16;
const GREATEST_MM = 80;

/** A kind of body from the side and from above, before it is put into the table; in its typed height and width. */
export function ShapePreview({ kind, height, width, lengthUnit }: ShapePreviewProps) {
  const heightMm = sizeOf(height, lengthUnit) ?? HEIGHT_MM;
  const widthMm = sizeOf(width, lengthUnit) ?? WIDTH_MM;
  const stations = bodyShape(kind, { lengthMm: LENGTH_MM, heightMm, widthMm }, 41);
  const sideY = heightMm / 2 + 2;
  const topY = heightMm + 8 + widthMm / 2;
  // Rounded, for the server and the browser differ in the last digits of a power.
  const at = (x: number, y: number) => `${x.toFixed(2)} ${y.toFixed(2)}`;
  const outline = (half: 'halfHeightMm' | 'halfWidthMm', middle: number) =>
    [
      ...stations.map((station) => at(station.xMm, middle - station[half])),
      ...stations.toReversed().map((station) => at(station.xMm, middle + station[half])),
    ].join('L');
  return (
    <svg
      viewBox={`-2 0 ${LENGTH_MM + 4} ${topY + widthMm / 2 + 2}`}
      role="img"
      aria-label="The shape from the side and, under it, from above"
      className="h-auto max-h-60 w-full max-w-md"
    >
      <path d={`M${outline('halfHeightMm', sideY)}Z`} className="fill-chart-fill stroke-ink" strokeWidth="0.5" />
      <path d={`M${outline('halfWidthMm', topY)}Z`} className="fill-chart-fill stroke-ink" strokeWidth="0.5" />
    </svg>
  );
}

function sizeOf(text: string, unit: LengthUnit): number | null {
  const reading = readQuantity('length', text, unit === 'inch' ? 'in' : 'mm');
  return reading.ok && reading.value > 0 && reading.value <= GREATEST_MM ? reading.value : null;
}
