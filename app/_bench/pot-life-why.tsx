import type { MixState } from '@/lib/batch/batch-state';
import type { PotLifeCriterion } from '@/lib/cure/adhesive-sheet';
import { massText, temperatureText } from '@/lib/units/format-quantity';
import type { Instant } from '@/lib/units/instant';
import type { MassUnit, TemperatureUnit } from '@/lib/units/unit-choice';
import { Why } from '../_ui/why';
import { NO_SOURCE, sourceText } from './cure-why';

export interface PotLifeWhyProps {
  readonly mix: MixState;
  readonly time: (at: Instant) => string;
  readonly massUnit: MassUnit;
  readonly temperatureUnit: TemperatureUnit;
}

/** How a pot life was found. */
export function PotLifeWhy({ mix, time, massUnit, temperatureUnit }: PotLifeWhyProps) {
  const { sheet, potLife, massG, temperatureC, mixedAt } = mix;
  if (!potLife.ok) return null;
  const points = sheet.potLife.map(
    (point) =>
      `${point.minutes} min at ${massText(point.massG, massUnit)} and ${temperatureText(point.temperatureC, temperatureUnit)} (${criterionText(point.criterion)})`,
  );
  return (
    <Why
      about={`the pot life of mix ${mix.number}`}
      formula="The pot life of the sheet, longer for a smaller or a cooler cup: a power of the mass and the rate law of the temperature."
      inputs={[
        {
          label: 'In the cup',
          value: `${massText(massG, massUnit)} at ${temperatureText(temperatureC, temperatureUnit)}, mixed ${time(mixedAt)}`,
        },
        { label: 'On the sheet', value: points.join('; ') },
      ]}
      source={sourceText(sheet.sources.potLife) || NO_SOURCE}
      assumption={
        potLife.isExtrapolated
          ? 'Mass or temperature is far outside what the sheet was tested at: take it with care.'
          : 'Counted from the first contact of the two parts, in the warmer of room and parts.'
      }
      uncertainty={`Between ${time(potLife.lowerAt)} and ${time(potLife.upperAt)}; the countdown runs to the first.`}
    />
  );
}

/** What ends a pot life in its test. */
export function criterionText(criterion: PotLifeCriterion): string {
  switch (criterion) {
    case 'viscosity-doubled':
      return 'until twice as thick';
    case 'cup-reaches-50C':
      return 'until the cup is at 50 °C';
    case 'cup-reaches-40C-less-margin':
      return 'until the cup is at 40 °C, less a margin';
    case 'gel':
      return 'until it gels';
    case 'standard-cup':
      return 'in a standard cup';
    case 'thin-film-workable':
      return 'workable as a thin film';
    case 'unknown':
      return 'end of the test not stated';
  }
}
