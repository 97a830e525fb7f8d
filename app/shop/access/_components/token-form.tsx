import { ActionForm } from '@/app/_ui/action-form';
import { RadioField } from '@/app/_ui/choice-field';
import { TextField } from '@/app/_ui/field';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { TOKEN_SCOPES } from '@/lib/contracts/access-token';
import type { Sensor } from '@/prisma/data/sensors';
import { createTokenAction } from '../actions';
import { SCOPE_WORDS } from './scope-words';

/** A new token: for whom, for what, for how long. */
export function TokenForm({ sensors }: { readonly sensors: readonly Sensor[] }) {
  return (
    <ActionForm action={createTokenAction} clearsWhenDone>
      <div className="grid gap-5 sm:grid-cols-2">
        <TextField name="name" label="Name" hint="The device that gets it." maxLength={60} />
        <RadioField
          name="scope"
          legend="It may"
          defaultValue="readings:write"
          options={TOKEN_SCOPES.map((value) => ({ value, label: SCOPE_WORDS[value] }))}
        />
        <SelectField
          name="sensorId"
          label="Sensor"
          hint={sensors.length === 0 ? 'Add a sensor in Temperature first.' : 'Readings only: whose they are.'}
          isOptional
          emptyLabel="none"
          options={sensors.map((sensor) => ({ value: sensor.id, label: sensor.name }))}
          defaultValue={sensors.length === 1 ? sensors[0]?.id : undefined}
        />
        <TextField name="expiresOn" type="date" label="Last day" hint="Empty: until it is revoked." isOptional />
      </div>
      <div>
        <SubmitButton pendingText="Making…">Make the token</SubmitButton>
      </div>
    </ActionForm>
  );
}
