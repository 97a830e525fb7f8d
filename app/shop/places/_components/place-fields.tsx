import { TextField } from '@/app/_ui/field';
import { SelectField } from '@/app/_ui/select-field';
import { timeInput } from '@/app/_ui/time-input';
import { RESOURCE_KINDS } from '@/lib/contracts/resource-forms';
import type { ShopResource } from '@/prisma/data/resources';
import { PLACE_WORDS } from './kind-words';

/** The fields of places of one kind; without `resource` for new ones. */
export function PlaceFields({ resource }: { readonly resource?: ShopResource }) {
  const time = (minute: number | null | undefined) => (minute == null ? undefined : timeInput(minute));
  return (
    <div className="grid gap-5 sm:grid-cols-2">
      <TextField
        name="name"
        label="Name"
        hint="As it is called in the shop."
        maxLength={60}
        defaultValue={resource?.name}
      />
      <SelectField
        name="kind"
        label="What it is"
        options={RESOURCE_KINDS.map((value) => ({ value, label: PLACE_WORDS[value] }))}
        defaultValue={resource?.kind}
      />
      <TextField
        name="capacity"
        label="Places"
        hint="How many pieces it holds at once; for a booth, how many people at once."
        inputMode="numeric"
        maxLength={4}
        defaultValue={resource === undefined ? undefined : String(resource.capacity)}
      />
      <div className="grid grid-cols-2 gap-4">
        <TextField
          name="openFrom"
          type="time"
          label="Only from"
          isOptional
          defaultValue={time(resource?.openFromMinute)}
        />
        <TextField name="openTo" type="time" label="until" isOptional defaultValue={time(resource?.openToMinute)} />
      </div>
    </div>
  );
}
