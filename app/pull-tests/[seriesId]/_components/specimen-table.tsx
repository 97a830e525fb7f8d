import Link from 'next/link';
import type { PullClock } from '@/app/_server/pull-clock';
import { StatusMark } from '@/app/_ui/status-mark';
import { type Column, Table } from '@/app/_ui/table';
import { countsAsText, loadText } from '@/app/pull-tests/_components/pull-use-text';
import type { JudgedPull } from '@/lib/pulltest/judge-pulls';
import { modeText } from '@/lib/pulltest/pull-mode';
import { whenText } from '@/lib/units/format-instant';
import { lengthText } from '@/lib/units/format-quantity';
import type { Instant } from '@/lib/units/instant';
import type { PullSeries, SeriesSpecimen } from '@/prisma/data/pull-series';
import type { ShopSettings } from '@/prisma/data/shop';

export interface SpecimenTableProps {
  readonly series: PullSeries;
  readonly judged: readonly JudgedPull[];
  readonly clockOf: (specimen: SeriesSpecimen, at: Instant) => PullClock;
  readonly shop: ShopSettings;
  readonly nowAt: Instant;
}

/** Every specimen in the order of pulling, with its readings or with when it may be pulled. */
export function SpecimenTable({ series, judged, clockOf, shop, nowAt }: SpecimenTableProps) {
  const mixes = new Map(series.mixes.map(({ id, name }) => [id, name]));
  const hasConditions = series.plan.conditions.length > 1;
  const pullsOf = (specimen: SeriesSpecimen) => judged.filter(({ record }) => record.specimenId === specimen.id);
  const columns: readonly Column<SeriesSpecimen>[] = [
    {
      id: 'code',
      title: 'Specimen',
      cell: (specimen) => (
        <Link
          href={`/pull-tests/${series.id}/specimens/${specimen.id}`}
          prefetch={false}
          className="inline-flex min-h-touch items-center underline underline-offset-4"
        >
          {specimen.pullOrder}. {specimen.code}
        </Link>
      ),
    },
    { id: 'depth', title: 'Depth', isNumber: true, cell: ({ depthMm }) => lengthText(depthMm, shop.lengthUnit) },
    { id: 'mix', title: 'Mix', cell: ({ mixId }) => mixes.get(mixId) ?? '' },
    ...(hasConditions
      ? [{ id: 'condition', title: 'Of', isLong: true, cell: ({ condition }: SeriesSpecimen) => condition }]
      : []),
    {
      id: 'load',
      title: 'Load',
      isNumber: true,
      cell: (specimen) => lines(pullsOf(specimen).map((pull) => loadText(pull, shop.forceUnit))),
    },
    {
      id: 'mode',
      title: 'How it ended',
      cell: (specimen) => lines(pullsOf(specimen).map(({ record }) => modeText(record.mode))),
    },
    {
      id: 'state',
      title: 'State',
      isLong: true,
      cell: (specimen) => {
        const pulls = pullsOf(specimen);
        if (pulls.length > 0) return lines(pulls.map(countsAsText));
        return <Timing clock={clockOf(specimen, nowAt)} nowAt={nowAt} zone={shop.timeZone} />;
      },
    },
  ];
  return (
    <Table
      caption="Specimens in the order of pulling"
      columns={columns}
      rows={series.specimens}
      rowKey={(specimen) => specimen.id}
    />
  );
}

function lines(texts: readonly string[]) {
  if (texts.length === 0) return '–';
  // A specimen's pulls never change their order.
  return texts.map((text, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: see above
    <span key={index} className="block">
      {text}
    </span>
  ));
}

/** Whether a specimen may be pulled now. */
export function Timing({
  clock,
  nowAt,
  zone,
}: {
  readonly clock: PullClock;
  readonly nowAt: Instant;
  readonly zone: string;
}) {
  const { timing } = clock;
  switch (timing.kind) {
    case 'cured':
      return <StatusMark status="ready">Cured: pull it</StatusMark>;
    case 'early':
      return (
        <StatusMark status="waiting">
          {timing.releasedAt === null
            ? 'Not cured within the time that can be foreseen: too cold'
            : `Not before ${whenText(timing.releasedAt, nowAt, zone)}`}
        </StatusMark>
      );
    case 'not-judged':
      return (
        <StatusMark status="late">
          Not known whether it has cured: hours of the mix or its data sheet missing
        </StatusMark>
      );
  }
}
