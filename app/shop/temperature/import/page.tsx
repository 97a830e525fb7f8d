import type { Metadata } from 'next';
import { Page } from '@/app/_ui/page';
import { db } from '@/prisma/client';
import { listSensors } from '@/prisma/data/sensors';
import { ImportDesk } from './_components/import-desk';

export const metadata: Metadata = { title: 'Import a log' };

export default async function ImportPage() {
  const sensors = await listSensors(await db());
  return (
    <Page
      title="Import a log"
      lead="Take in the text file (CSV) that a temperature logger writes. First you see how it was understood; nothing is kept before you say so."
      up={{ href: '/shop/temperature', label: 'Temperature' }}
    >
      <ImportDesk sensors={sensors.map(({ id, name }) => ({ id, name }))} />
      <datalist id="time-zones">
        {Intl.supportedValuesOf('timeZone').map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
    </Page>
  );
}
