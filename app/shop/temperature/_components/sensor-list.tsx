import Link from 'next/link';
import { ActionForm } from '@/app/_ui/action-form';
import { TextField } from '@/app/_ui/field';
import { StatusMark } from '@/app/_ui/status-mark';
import { SubmitButton } from '@/app/_ui/submit-button';
import { Table } from '@/app/_ui/table';
import { whenText } from '@/lib/units/format-instant';
import { temperatureText } from '@/lib/units/format-quantity';
import type { Instant } from '@/lib/units/instant';
import type { SensorLine } from '@/prisma/data/sensors';
import type { ShopSettings } from '@/prisma/data/shop';
import { addSensorAction } from '../actions';

export interface SensorListProps {
  readonly sensors: readonly SensorLine[];
  readonly shop: ShopSettings;
  readonly nowAt: Instant;
}

/** The loggers of the shop with what they wrote last, and a form for one more. */
export function SensorList({ sensors, shop, nowAt }: SensorListProps) {
  return (
    <div className="grid gap-5">
      {sensors.length > 0 && (
        <Table
          caption="Sensors"
          rows={sensors}
          rowKey={(sensor) => sensor.id}
          columns={[
            {
              id: 'name',
              title: 'Sensor',
              cell: (sensor) => (
                <Link
                  href={`/shop/temperature/sensors/${sensor.id}`}
                  prefetch={false}
                  className="inline-flex min-h-touch items-center underline underline-offset-4"
                >
                  {sensor.name}
                </Link>
              ),
            },
            { id: 'place', title: 'Place', cell: (sensor) => sensor.place || 'not said' },
            { id: 'newest', title: 'Newest reading', cell: (sensor) => newestText(sensor, shop, nowAt) },
            {
              id: 'rules',
              title: 'Rules the clocks',
              cell: (sensor) => (sensor.id === shop.cureSensorId ? <StatusMark status="ready">Yes</StatusMark> : 'no'),
            },
          ]}
        />
      )}
      <ActionForm action={addSensorAction} clearsWhenDone className="grid max-w-3xl gap-3">
        <div className="grid gap-4 sm:grid-cols-2">
          <TextField name="name" label="Add a sensor" hint="A name for the logger." maxLength={60} />
          <TextField
            name="place"
            label="Where it hangs"
            hint="Beside the pieces is best: the air at the ceiling is warmer."
            isOptional
            maxLength={120}
          />
        </div>
        <div>
          <SubmitButton weight="plain" pendingText="Adding…">
            Add the sensor
          </SubmitButton>
        </div>
      </ActionForm>
    </div>
  );
}

function newestText({ newest }: SensorLine, { temperatureUnit, timeZone }: ShopSettings, nowAt: Instant): string {
  if (newest === null) return 'none yet';
  const humidity = newest.humidityPct === null ? '' : `, ${Math.round(newest.humidityPct)} % humidity`;
  return `${temperatureText(newest.temperatureC, temperatureUnit)}${humidity}, ${whenText(newest.at, nowAt, timeZone)}`;
}
