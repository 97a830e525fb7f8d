import { describe, expect, it } from 'vitest';
import { preparationSchema } from '@/lib/contracts/preparation';
import { USUAL_CHOICES } from '@/lib/prepare/preparation';
import { type PreparedAnchor, type PrepareInput, prepareBatch } from '@/lib/prepare/prepare-batch';
import { sheet } from '../cure/make-course';

const CHOICES = { ...USUAL_CHOICES, temperatureC: 22 };
const GLUE = sheet({
  potLife: [{ minutes: 30, massG: 100, temperatureC: 25, criterion: 'standard-cup' }],
  ratio: { partsA: 2, partsB: 1, basis: 'mass' },
  densityA: 1.15,
  densityB: 0.97,
});

const eye = (id: string, embedmentMm: number): PreparedAnchor => ({
  id,
  kind: 'twisted-wire',
  wireMaterialId: 'wire',
  wireDiameterMm: 0.9,
  twistPitchMm: 6,
  eyeInsideMm: 3,
  bitDiameterMm: 2.5,
  drillDepthMm: embedmentMm,
  embedmentMm,
});

function input(pieces: number, changed: Partial<PrepareInput> = {}): PrepareInput {
  const anchors = [eye('tie', 30), eye('tail', 25)];
  const open = Array.from({ length: pieces }, (_, i) =>
    anchors.map(({ id }) => ({ piece: i + 1, anchorId: id })),
  ).flat();
  return {
    anchors,
    operations: [{ id: 'glue', kind: 'glue', materialId: 'epoxy', sheet: GLUE, cover: 'film', open }],
    surfaceMm2: 4800,
    bodyLengthMm: 100,
    lengths: new Map([['wire', [{ id: 'coil', lengthMm: 20_000, count: 1 }]]]),
    weighed: [],
    ...changed,
  };
}

describe('preparing a batch', () => {
  it('gives every open joint one mix, doses that hold 2 : 1, and every wire a length', () => {
    const made = prepareBatch(input(20), CHOICES);
    const [card] = made.cards;
    expect(card?.mixes.flatMap((mix) => mix.uses)).toHaveLength(40);
    for (const mix of card?.mixes ?? []) {
      expect(mix.partAG + mix.partBG).toBeCloseTo(mix.massG, 9);
      expect(Math.abs(mix.ratioError)).toBeLessThan(0.05);
    }
    const [cut] = made.cuts;
    // Shank of 30 and 25 mm at 1.105471, loop 12.252211, 20 mm to grip: 98.58 and 87.53, rounded up to half a millimetre.
    expect(cut?.wires.map(({ cutMm }) => cutMm)).toEqual([99, 88]);
    expect(cut?.bars.flatMap(({ pieces }) => pieces)).toHaveLength(40);
    expect(preparationSchema.parse(JSON.parse(JSON.stringify(made)))).toEqual(made);
  });

  it('blocks a ratio by volume without densities, and says which figures are missing', () => {
    const { densityA: _a, densityB: _b, ...bare } = GLUE;
    const blind = { ...bare, ratio: { partsA: 2, partsB: 1, basis: 'volume' } as const };
    const made = input(3);
    const operations = made.operations.map((operation) => ({ ...operation, sheet: blind }));
    expect(prepareBatch({ ...made, operations }, CHOICES).cards[0]?.obstacle).toBe('volume-ratio-without-densities');
    const anchors = [eye('tie', 30), { ...eye('tail', 25), bitDiameterMm: null, eyeInsideMm: null }];
    const unknown = prepareBatch(input(3, { anchors }), CHOICES);
    expect(unknown.cards[0]).toMatchObject({ obstacle: 'anchor-figures', anchorIds: ['tail'], mixes: [] });
    expect(unknown.wireUnknown).toEqual(['tail']);
  });

  it('coats by the surface of the body, and says when there is none', () => {
    const open = [{ piece: 1, anchorId: null }];
    const operations = [{ id: 'coat', kind: 'coat', materialId: 'epoxy', sheet: GLUE, cover: 'film', open } as const];
    const made = prepareBatch(input(1, { operations }), CHOICES);
    // 4800 mm2 x 0.2 mm x 1.0834 g/mL x 1.35 = 1.40 g, and 0.5 g in the cup; the scale asks for 9.3 g.
    expect(made.cards[0]?.mixes).toMatchObject([{ massG: 9.3, partAG: 6.2, partBG: 3.1 }]);
    expect(prepareBatch(input(1, { operations, surfaceMm2: null }), CHOICES).cards[0]?.obstacle).toBe('no-body');
    const lip = (perPieceG: number | null) =>
      prepareBatch(
        input(1, {
          operations: operations.map((own) => ({ ...own, cover: { perPieceG, setsAnchorIds: [], shares: 1 } })),
        }),
        CHOICES,
      ).cards[0];
    expect(lip(10)?.mixes).toMatchObject([{ massG: 10.5 }]);
    expect(lip(null)?.obstacle).toBe('no-bill-line');
  });

  it('gives a glue that also sets anchors only what the bill leaves beside their joints', () => {
    const open = [{ piece: 1, anchorId: null }];
    const lip = (perPieceG: number, shares: number) => {
      const cover = { perPieceG, setsAnchorIds: ['tie', 'tail'], shares };
      const operations = [{ id: 'lip', kind: 'glue', materialId: 'epoxy', sheet: GLUE, cover, open } as const];
      return prepareBatch(input(1, { operations }), CHOICES).cards[0];
    };
    // Joints of 30 and 25 mm: 55/25 x 87.555 mm3 x 1.0834 g/mL x 1.5 = 0.313 g of the 20.3 g; 0.5 g stay in the cup.
    expect(lip(20.3, 1)?.mixes[0]?.massG).toBeCloseTo(20.5, 1);
    expect(lip(20.3, 2)?.mixes[0]?.massG).toBeCloseTo(10.5, 1);
    expect(lip(0.3, 1)?.obstacle).toBe('no-bill-line');
  });

  it("takes the shop's own waste from three weighed glue-ups on, for joints and coats each", () => {
    const weighing = { operationId: 'glue', kind: 'joint', mixedG: 6, leftG: 3.4, netG: 2 } as const;
    const made = (count: number, kind: 'joint' | 'coat') =>
      prepareBatch(input(4, { weighed: Array.from({ length: count }, () => ({ ...weighing, kind })) }), CHOICES)
        .cards[0];
    expect(made(2, 'joint')).toMatchObject({ waste: 1.5, wasteKind: 'joint', wasteCount: 0 });
    expect(made(3, 'coat')).toMatchObject({ waste: 1.5, wasteCount: 0 });
    expect(made(3, 'joint')?.waste).toBeCloseTo(1.3, 9);
    expect(made(3, 'joint')?.wasteCount).toBe(3);
    // Four pieces of 55/25 x 87.555 mm3 at 1.0834 g/mL, whatever the waste.
    for (const count of [0, 3]) expect(made(count, 'joint')?.netG).toBeCloseTo(4 * 2.2 * 0.087555 * 1.0834, 2);
  });

  it('cuts by the loop, the ends to hold and the turns that are chosen', () => {
    const wires = (changed: Partial<typeof CHOICES>, anchors = [eye('tie', 30), eye('tail', 25)]) =>
      prepareBatch(input(1, { anchors }), { ...CHOICES, ...changed }).cuts[0]?.wires.map(({ cutMm }) => cutMm);
    // A double ring adds pi x 3.9 = 12.25 mm to 98.58; 30 mm to hold instead of 20 add 10.
    expect(wires({ loopDeg: 720 })).toEqual([111, 100]);
    expect(wires({ gripMm: 30 })).toEqual([109, 98]);
    const through = ['tie', 'tail'].map((id): PreparedAnchor => ({ ...eye(id, 25), kind: 'through-wire' }));
    const [three = 0] = wires({}, through) ?? [];
    // A turn is 0.9 x hypot(1, 2 pi) = 5.73 mm, at both ends.
    expect(three - (wires({ wrapTurns: 1 }, through)?.[0] ?? 0)).toBeCloseTo(4 * 5.73, 0);
  });

  it('cuts from the rods of a bundle, and says what is short', () => {
    const lengths = new Map([['wire', [{ id: 'bundle', lengthMm: 2100, count: 1 }]]]);
    const rods = prepareBatch(input(8, { lengths }), { ...CHOICES, rodMm: 1000 });
    expect(rods.cuts[0]?.bars.map(({ lengthMm }) => lengthMm).toSorted((a, b) => a - b)).toEqual([1000, 1000]);
    const short = prepareBatch(input(20, { lengths }), { ...CHOICES, rodMm: 1000 });
    expect(short.cuts[0]).toMatchObject({ obstacle: 'not-enough', bars: [], missingMm: 40 * 93.5 - 2100 + 15 });
    expect(prepareBatch(input(1, { lengths: new Map() }), CHOICES).cuts[0]?.obstacle).toBe('too-long');
  });

  it('counts one wire for all eyes of a through-wire', () => {
    const through = (id: string): PreparedAnchor => ({ ...eye(id, 25), kind: 'through-wire', twistPitchMm: null });
    const made = prepareBatch(input(4, { anchors: [through('tie'), through('tail')] }), CHOICES);
    expect(made.cuts[0]?.wires).toMatchObject([{ anchorId: 'tie', count: 4 }]);
  });
});
