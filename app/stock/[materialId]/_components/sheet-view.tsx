import { ButtonLink } from '@/app/_ui/button-link';
import { dayText } from '@/app/_ui/day-text';
import { EmptyState } from '@/app/_ui/empty-state';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { Material } from '@/prisma/data/materials';
import { PotLifeTable } from './pot-life-table';
import { ReadyTable } from './ready-table';
import { SheetFigures } from './sheet-figures';

export interface SheetViewProps {
  readonly material: Material;
  readonly units: UnitChoice;
}

/** A data sheet as it was entered, and what follows from it at the shop's usual temperatures. */
export function SheetView({ material, units }: SheetViewProps) {
  const { sheet, sheetRevision, sheetOn } = material;
  if (sheet === null) {
    return (
      <EmptyState
        title="No data sheet yet"
        action={
          <ButtonLink href={`/stock/${material.id}/sheet`} weight="primary">
            Enter the data sheet
          </ButtonLink>
        }
      >
        <p>
          Without figures nothing can be mixed from it and no clock can run. Take the technical data sheet of the
          product: pot life with its mass and temperature, and the hours to handling, sanding, recoating and full
          strength. Have no sheet at hand? Start from a general class and replace its figures later.
        </p>
      </EmptyState>
    );
  }
  const name = [sheetRevision, sheetOn === null ? '' : dayText(sheetOn)].filter((text) => text !== '').join(', ');
  return (
    <div className="grid gap-8">
      {name !== '' && <p className="text-ink-soft">Sheet: {name}</p>}
      <ReadyTable sheet={sheet} units={units} />
      <PotLifeTable sheet={sheet} units={units} />
      <SheetFigures sheet={sheet} units={units} />
    </div>
  );
}
