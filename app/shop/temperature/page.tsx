import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { Card, Page, Section } from '@/app/_ui/page';
import { HOUR_MS } from '@/lib/units/instant';
import { db } from '@/prisma/client';
import { listReadingBuckets, listSensorLines } from '@/prisma/data/sensors';
import { CureSensorForm } from './_components/cure-sensor-form';
import { ProfileForm } from './_components/profile-form';
import { ReadingsPlot } from './_components/readings-plot';
import { SensorList } from './_components/sensor-list';
import { WeekDrawing } from './_components/week-drawing';

export const metadata: Metadata = { title: 'Temperature' };

const SHOWN_MS = 14 * 24 * HOUR_MS;
/** One mark for every half hour: some 670 over two weeks. Chosen: finer than a screen shows. */
const BUCKET_MS = HOUR_MS / 2;

export default async function TemperaturePage() {
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const toAt = now();
  const fromAt = toAt - SHOWN_MS;
  const sensors = await listSensorLines(database);
  const cureSensor = sensors.find((sensor) => sensor.id === shop.cureSensorId) ?? null;
  const buckets =
    cureSensor === null ? [] : await listReadingBuckets(database, cureSensor.id, { fromAt, toAt, bucketMs: BUCKET_MS });
  return (
    <Page
      title="Temperature"
      lead="Cure follows it. Where a logger wrote, its readings count; where none did, and for the time to come, the usual week does."
      up={{ href: '/shop', label: 'Shop' }}
      actions={
        <>
          <ButtonLink href="/shop/access">Access for loggers</ButtonLink>
          <ButtonLink href="/shop/temperature/import" weight="primary">
            Import a logger file
          </ButtonLink>
        </>
      }
    >
      <Section
        title="The last two weeks"
        lead={cureSensor === null ? undefined : `Readings of ${cureSensor.name}, over the usual week.`}
      >
        <ReadingsPlot buckets={buckets} shop={shop} fromAt={fromAt} toAt={toAt} />
      </Section>
      <Section title="Sensors">
        <SensorList sensors={sensors} shop={shop} nowAt={toAt} />
        <CureSensorForm sensors={sensors} cureSensorId={shop.cureSensorId} />
      </Section>
      <Section
        title="The usual week"
        lead="By the clock on the wall. It holds where there is no reading, and for every hour to come."
      >
        <Card>
          <WeekDrawing profile={shop.temperatureProfile} unit={shop.temperatureUnit} />
        </Card>
        <ProfileForm shop={shop} />
      </Section>
    </Page>
  );
}
