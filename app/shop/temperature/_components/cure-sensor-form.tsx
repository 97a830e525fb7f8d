import { ActionForm } from '@/app/_ui/action-form';
import { RadioField } from '@/app/_ui/choice-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import type { Sensor } from '@/prisma/data/sensors';
import { chooseCureSensorAction } from '../actions';

export interface CureSensorFormProps {
  readonly sensors: readonly Sensor[];
  readonly cureSensorId: string | null;
}

/** Whose readings the cure clocks follow. */
export function CureSensorForm({ sensors, cureSensorId }: CureSensorFormProps) {
  if (sensors.length === 0) return null;
  return (
    <ActionForm action={chooseCureSensorAction} className="grid gap-3">
      <RadioField
        name="cureSensorId"
        legend="The cure clocks follow"
        hint="Choose the sensor nearest to where the pieces cure."
        defaultValue={cureSensorId ?? ''}
        options={[
          ...sensors.map((sensor) => ({ value: sensor.id, label: sensor.name })),
          { value: '', label: 'the usual week only' },
        ]}
      />
      <div>
        <SubmitButton weight="plain">Save the choice</SubmitButton>
      </div>
    </ActionForm>
  );
}
