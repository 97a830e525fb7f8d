import { expect, test } from 'vitest';
import { saveStrength } from '@/app/_commands/save-strength';
import type { StrengthFigures } from '@/lib/materials/strength-figures';
import { findMaterial } from '@/prisma/data/materials';
import { readStrengthShelf } from '@/prisma/data/strength-shelf';
import { prepareShop } from '@/prisma/seed/prepare-shop';
import { describeBothDatabases } from '../prisma/both-databases';

const NOW = Date.UTC(2026, 2, 12, 19, 40);
const WIRE = 'start-brass-wire-1-0-mm-half-hard';
const GLUE = 'start-epoxy-slow';

const wire: StrengthFigures = {
  kind: 'wire',
  sheet: { alloy: 'brass', temper: 'half-hard', diameterMm: 1, tensileMpa: 420, sources: {} },
};

describeBothDatabases('figures of strength', (makeDb) => {
  test('are kept as they were entered and raise the version; a form that was overtaken is refused', async () => {
    const db = await makeDb();
    await prepareShop(db, NOW);
    expect(await saveStrength(db, WIRE, { figures: wire, seenVersion: 1 }, NOW)).toEqual({ ok: true });
    expect(await findMaterial(db, WIRE)).toMatchObject({ strength: wire, version: 2 });
    expect((await readStrengthShelf(db)).get(WIRE)?.figures).toEqual(wire);
    const late = await saveStrength(db, WIRE, { figures: wire, seenVersion: 1 }, NOW);
    expect(late).toMatchObject({ ok: false, code: 'changed-meanwhile' });
    expect(await saveStrength(db, 'gone', { figures: wire, seenVersion: 1 }, NOW)).toMatchObject({
      code: 'no-material',
    });
    const other = await saveStrength(db, 'start-balsa', { figures: wire, seenVersion: 1 }, NOW);
    expect(other).toMatchObject({ ok: false, code: 'other-kind' });
  });

  test('an adhesive keeps the figures of its clocks beside those of its strength', async () => {
    const db = await makeDb();
    await prepareShop(db, NOW);
    const before = await findMaterial(db, GLUE);
    const figures: StrengthFigures = { kind: 'adhesive', sheet: { bondClass: 'other', maxGapMm: 0.4, sources: {} } };
    expect(await saveStrength(db, GLUE, { figures, seenVersion: 1 }, NOW)).toEqual({ ok: true });
    const after = await findMaterial(db, GLUE);
    expect(after?.sheet).toEqual(before?.sheet);
    expect(after?.sheet).not.toBeNull();
    expect(after?.strength).toEqual(figures);
  });
});
