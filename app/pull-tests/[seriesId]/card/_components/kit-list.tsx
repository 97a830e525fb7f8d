import { kitOf } from '@/app/_server/pull-kit';
import { PullCautions } from '@/app/pull-tests/_components/pull-cautions';
import { lengthText, massText, wireDiameterText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { PullSeries } from '@/prisma/data/pull-series';

/** What making the specimens takes: wire, holes, mixes. */
export function KitList({ series, shop }: { readonly series: PullSeries; readonly shop: UnitChoice }) {
  const { wireMm, holes, mixes } = kitOf(series);
  const { lengthUnit, massUnit } = shop;
  const { wireDiameterMm, bitDiameterMm } = series.plan.conditions[0] ?? { wireDiameterMm: 0, bitDiameterMm: 0 };
  return (
    <section className="grid gap-2">
      <h2 className="text-lg font-bold">To make</h2>
      <ul className="list-disc pl-5">
        <li>
          Holes of {wireDiameterText(bitDiameterMm, lengthUnit)}:{' '}
          {holes.map(({ depthMm, count }) => `${count} of ${lengthText(depthMm, lengthUnit)}`).join(', ')}. Set the
          drill stop with a gauge, and write a depth that came out otherwise beside its specimen.
        </li>
        <li>
          Wire of {wireDiameterText(wireDiameterMm, lengthUnit)}: {lengthText(wireMm, lengthUnit)} in all, with eye and
          grip.
        </li>
        <li>
          {mixes
            .map(({ mix, joints, massG }) => `Mix ${mix}: ${massText(massG, massUnit)} for ${joints} joints`)
            .join('; ')}
          . Weigh and stir each by itself, as you would for lures: they stand for mixes to come.
        </li>
      </ul>
      <PullCautions step="making" />
    </section>
  );
}
