import { StatusMark } from '@/app/_ui/status-mark';
import { stockText } from '@/lib/stock/stock-text';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { MaterialLine } from '@/prisma/data/materials';
import { PART_WORDS } from './words';

export interface OnHandTextProps {
  readonly line: Pick<MaterialLine, 'onHand' | 'buying'>;
  readonly units: UnitChoice;
}

/** What is left of a material, by part, and whether it is time to order. */
export function OnHandText({ line: { onHand, buying }, units }: OnHandTextProps) {
  const { reorderPoint, stockUnit } = buying;
  const left = onHand.reduce((sum, { unit, left: some }) => sum + (unit === stockUnit ? some : 0), 0);
  const texts = onHand.map(({ part, unit, left: some }) =>
    [stockText(some, unit, units), part === 'whole' ? '' : PART_WORDS[part]].filter((word) => word !== '').join(' '),
  );
  return (
    <>
      {texts.length === 0 ? '–' : texts.join(', ')}
      {reorderPoint !== null && left <= reorderPoint && (
        <>
          {' '}
          <StatusMark status="closing">Order</StatusMark>
        </>
      )}
    </>
  );
}
