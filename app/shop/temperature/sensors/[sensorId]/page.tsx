import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ActionForm } from '@/app/_ui/action-form';
import { TextField } from '@/app/_ui/field';
import { Card, Page } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import { saveSensorAction } from '@/app/shop/temperature/actions';
import { db } from '@/prisma/client';
import { listSensors } from '@/prisma/data/sensors';

export const metadata: Metadata = { title: 'Sensor' };

export default async function SensorPage({ params }: { readonly params: Promise<{ sensorId: string }> }) {
  const { sensorId } = await params;
  const sensor = (await listSensors(await db())).find((line) => line.id === sensorId);
  if (sensor === undefined) notFound();
  return (
    <Page title={sensor.name} up={{ href: '/shop/temperature', label: 'Temperature' }}>
      <Card className="max-w-2xl">
        <ActionForm action={saveSensorAction.bind(null, sensorId)}>
          <TextField name="name" label="Name" maxLength={60} defaultValue={sensor.name} />
          <TextField name="place" label="Where it hangs" isOptional maxLength={120} defaultValue={sensor.place} />
          <div>
            <SubmitButton>Save the sensor</SubmitButton>
          </div>
        </ActionForm>
      </Card>
    </Page>
  );
}
