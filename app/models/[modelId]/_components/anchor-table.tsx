import { type Column, Table } from '@/app/_ui/table';
import { ANCHOR_KIND_WORDS, ROLE_WORDS } from '@/app/models/_components/words';
import { lengthText, wireDiameterText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { RevisionAnchor } from '@/prisma/data/revisions';

export interface AnchorTableProps {
  readonly anchors: readonly RevisionAnchor[];
  readonly units: UnitChoice;
}

const NOT_SAID = <span className="text-ink-soft">not said</span>;

/** Every eye and hanger fixed in the body. */
export function AnchorTable({ anchors, units }: AnchorTableProps) {
  if (anchors.length === 0) {
    return (
      <p className="max-w-2xl text-ink-soft">
        None yet. Enter the line tie and every hanger: each piece of a batch gets one joint an anchor, and glue-ups of
        the route set them.
      </p>
    );
  }
  return <Table caption="Anchors" columns={columns(units)} rows={anchors} rowKey={(anchor) => anchor.id} />;
}

function columns({ lengthUnit }: UnitChoice): Column<RevisionAnchor>[] {
  const length = (mm: number | null) => (mm === null ? NOT_SAID : lengthText(mm, lengthUnit));
  const diameter = (mm: number | null) => (mm === null ? NOT_SAID : wireDiameterText(mm, lengthUnit));
  return [
    { id: 'name', title: 'Anchor', cell: (anchor) => anchor.name },
    {
      id: 'kind',
      title: 'What and how',
      cell: (anchor) => `${ROLE_WORDS[anchor.role]}, ${ANCHOR_KIND_WORDS[anchor.kind]}`,
    },
    { id: 'x', title: 'From the nose', cell: (anchor) => length(anchor.xMm), isNumber: true },
    {
      id: 'angle',
      title: 'Angle',
      cell: (anchor) => (anchor.shankAngleDeg === null ? NOT_SAID : `${anchor.shankAngleDeg}°`),
      isNumber: true,
    },
    { id: 'wire', title: 'Wire', cell: (anchor) => diameter(anchor.wireDiameterMm), isNumber: true },
    { id: 'bit', title: 'Bit', cell: (anchor) => diameter(anchor.bitDiameterMm), isNumber: true },
    { id: 'drill', title: 'Drilled', cell: (anchor) => length(anchor.drillDepthMm), isNumber: true },
    { id: 'embedment', title: 'Embedment', cell: (anchor) => length(anchor.embedmentMm), isNumber: true },
    { id: 'adhesive', title: 'Adhesive', cell: (anchor) => anchor.adhesive?.name ?? NOT_SAID },
    { id: 'hook', title: 'Hook and ring', cell: hookAndRing },
  ];
}

function hookAndRing({ hook, splitRing }: RevisionAnchor): string {
  return [hook?.name, splitRing?.name].filter((name) => name !== undefined).join(', ') || '–';
}
