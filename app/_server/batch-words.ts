import 'server-only';
import type { BatchState } from '@/lib/batch/batch-state';
import type { BatchWords } from '@/lib/batch/batch-words';
import type { BatchPlan } from '@/lib/batch/plan';
import { whenText } from '@/lib/units/format-instant';
import { massText, temperatureText } from '@/lib/units/format-quantity';
import type { Instant } from '@/lib/units/instant';
import type { ShopSettings } from '@/prisma/data/shop';

/** The names of a batch's parts and the shop's way of writing times and quantities, for sentences read at `nowAt`. */
export function batchWords(
  { plan, state }: { readonly plan: BatchPlan; readonly state: BatchState },
  shop: Pick<ShopSettings, 'timeZone' | 'massUnit' | 'temperatureUnit'>,
  nowAt: Instant,
): BatchWords {
  const operations = new Map(plan.operations.map(({ id, name }) => [id, name]));
  const anchors = new Map(plan.anchors.map(({ id, name }) => [id, name]));
  return {
    operation: (id) => operations.get(id) ?? 'an operation not on the route',
    anchor: (id) => anchors.get(id) ?? 'an anchor not on the model',
    mix: (id) => mixName(state, id),
    time: (at) => whenText(at, nowAt, shop.timeZone),
    mass: (massG) => massText(massG, shop.massUnit),
    temperature: (temperatureC) => temperatureText(temperatureC, shop.temperatureUnit),
  };
}

/** A mix that was taken back is gone from the state, but the history still tells its number. */
function mixName(state: BatchState, mixId: string): string {
  const mix = state.mixes.find((candidate) => candidate.mixId === mixId);
  if (mix !== undefined) return `mix ${mix.number}`;
  for (const { event } of state.history) {
    if (event.body.kind === 'mix-started' && event.body.mixId === mixId) return `mix ${event.body.number}`;
  }
  return 'a mix that is not there';
}
