import type { ReactNode } from 'react';
import { Card } from '@/app/_ui/page';
import { Table } from '@/app/_ui/table';
import { BodyDrawing } from '@/app/models/_components/body-drawing';
import { forceText, lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { Revision } from '@/prisma/data/revisions';

/** Wood, sizes, the drawing and its stations. */
export function BodySection({ revision, units }: { readonly revision: Revision; readonly units: UnitChoice }) {
  const { profile, lengthMm, wood, lineClassN, note } = revision;
  const length = (mm: number) => lengthText(mm, units.lengthUnit);
  const highest = Math.max(0, ...profile.map((station) => station.halfHeightMm * 2));
  const widest = Math.max(0, ...profile.map((station) => station.halfWidthMm * 2));
  return (
    <div className="grid gap-5 lg:grid-cols-[2fr_1fr]">
      <Card className="grid content-center">
        {profile.length < 2 ? (
          <p className="text-ink-soft">
            Not measured yet. With calipers, take height and width at a handful of places from nose to tail: the
            drawing, and later the wood left round each anchor, come from them.
          </p>
        ) : (
          <BodyDrawing lengthMm={lengthMm} profile={profile} anchors={revision.anchors} lengthUnit={units.lengthUnit} />
        )}
      </Card>
      <dl className="grid content-start gap-x-6 gap-y-2 max-lg:grid-cols-2">
        <Fact term="Wood">{wood?.name ?? 'not chosen'}</Fact>
        <Fact term="Length">{length(lengthMm)}</Fact>
        <Fact term="Greatest height">{profile.length < 2 ? 'not measured' : length(highest)}</Fact>
        <Fact term="Greatest width">{profile.length < 2 ? 'not measured' : length(widest)}</Fact>
        <Fact term="Line it is made for">
          {lineClassN === null ? 'not said' : forceText(lineClassN, units.forceUnit)}
        </Fact>
        {note !== '' && <Fact term="Note">{note}</Fact>}
      </dl>
      {profile.length >= 2 && (
        <details className="lg:col-span-2">
          <summary className="inline-flex min-h-touch items-center font-semibold underline decoration-line-strong underline-offset-4">
            The {profile.length} stations as measured
          </summary>
          <Table
            caption="Stations of the body from nose to tail"
            rows={profile}
            rowKey={(station) => String(station.xMm)}
            columns={[
              { id: 'x', title: 'From the nose', cell: (station) => length(station.xMm) },
              { id: 'h', title: 'Height', cell: (station) => length(station.halfHeightMm * 2), isNumber: true },
              { id: 'w', title: 'Width', cell: (station) => length(station.halfWidthMm * 2), isNumber: true },
            ]}
          />
        </details>
      )}
    </div>
  );
}

function Fact({ term, children }: { readonly term: string; readonly children: ReactNode }) {
  return (
    <div>
      <dt className="text-sm text-ink-soft">{term}</dt>
      <dd className="font-semibold">{children}</dd>
    </div>
  );
}
