import type { SelectOption } from '@/app/_ui/select-field';
import type { MaterialKind } from '@/lib/contracts/material-forms';
import type { MaterialChoice } from '@/prisma/data/materials';
import type { MaterialName } from '@/prisma/data/revisions';

/** Materials of some kinds as choices; the ones in `used` are offered even when they were archived since. */
export function materialOptions(
  materials: readonly MaterialChoice[],
  kinds: readonly MaterialKind[],
  used: readonly (MaterialName | null)[] = [],
): SelectOption[] {
  const fitting = materials.filter((material) => kinds.includes(material.kind));
  const offered = new Set(fitting.map((material) => material.id));
  const archived = new Map(used.flatMap((name) => (name === null || offered.has(name.id) ? [] : [[name.id, name]])));
  return [
    ...fitting.map(({ id, name }) => ({ value: id, label: name })),
    ...[...archived.values()].map(({ id, name }) => ({ value: id, label: `${name} (archived)` })),
  ];
}
