import type { WhatIf } from '@/lib/contracts/stored-plan';
import type { TemperatureUnit } from '@/lib/units/unit-choice';
import type { PlanInput } from './plan-input';

/** The shop as it might be: everything of a comparison but the temperature, which the cures are computed with. */
export function withWhatIf(input: PlanInput, whatIf: WhatIf): PlanInput {
  const without = new Set(whatIf.withoutBatchIds);
  const instead = new Map(whatIf.materials.map(({ fromId, toId }) => [fromId, toId]));
  const materials = new Map(
    [...input.materials].map(([id, material]) => [id, input.materials.get(instead.get(id) ?? id) ?? material]),
  );
  return {
    ...input,
    batches: input.batches.filter(({ head }) => !without.has(head.id)),
    materials,
    // What is mixed instead is taken to be there.
    stock: { ...input.stock, bills: input.stock.bills.filter(({ materialId }) => !instead.has(materialId)) },
    resources: input.resources.map((resource) => {
      const places = whatIf.extraPlaces.filter(({ resourceId }) => resourceId === resource.id);
      const more = places.reduce((sum, extra) => sum + extra.places, 0);
      const changes = resource.changes.map((change) => ({ ...change, capacity: change.capacity + more }));
      return { ...resource, capacity: resource.capacity + more, changes };
    }),
    people: input.people.map((person) => ({
      ...person,
      benchHours: [...person.benchHours, ...whatIf.extraHours.filter(({ personId }) => personId === person.id)],
    })),
  };
}

const WEEKDAY_NAMES = ['Mondays', 'Tuesdays', 'Wednesdays', 'Thursdays', 'Fridays', 'Saturdays', 'Sundays'] as const;

/** What is tried, in words, one for each change. */
export function whatIfWords(input: PlanInput, whatIf: WhatIf, unit: TemperatureUnit): string[] {
  const degrees = unit === 'F' ? `${Math.round(whatIf.warmerC * 1.8)} °F` : `${whatIf.warmerC} °C`;
  const resource = (id: string) => input.resources.find((one) => one.id === id)?.name ?? 'something gone';
  const person = (id: string) => input.people.find((one) => one.id === id)?.name ?? 'somebody gone';
  const material = (id: string) => input.materials.get(id)?.name ?? 'a material gone';
  const batch = (id: string) => input.batches.find(({ head }) => head.id === id)?.head.number ?? 0;
  return [
    ...whatIf.extraPlaces.map(({ resourceId, places }) => `${places} more places: ${resource(resourceId)}`),
    ...(whatIf.warmerC === 0 ? [] : [`the shop ${degrees} ${whatIf.warmerC > 0 ? 'warmer' : 'colder'} than expected`]),
    ...whatIf.extraHours.map(
      ({ personId, weekday }) => `${person(personId)} also on ${WEEKDAY_NAMES[weekday - 1] ?? 'a day'}`,
    ),
    ...whatIf.materials.map(({ fromId, toId }) => `${material(toId)} in place of ${material(fromId)}`),
    ...whatIf.withoutBatchIds.map((id) => `without batch ${batch(id)}`),
  ];
}
