import { describe, expect, test } from 'vitest';
import { bodyShape } from '@/lib/geometry/body-shapes';
import { coverProfile } from '@/lib/geometry/cover';
import { shankPath } from '@/lib/geometry/shank-path';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import { anglePlot } from '@/lib/strength/angle-plot';
import { depthPlot } from '@/lib/strength/depth-plot';
import { inches } from '@/lib/units/force-and-length';
import { body as bodyOf } from '../geometry/bodies';
import { lbf, practice, SETTINGS } from './designs';

const at = (curve: readonly { at: number; loadN: number }[], x: number) =>
  curve.find((point) => Math.abs(point.at - x) < 1e-9)?.loadN ?? Number.NaN;

describe('strength against depth', () => {
  const plot = depthPlot(practice('yellow-poplar', 0.5), SETTINGS);

  test('reads what the estimate gives at a depth, here the practice depth of a quarter inch: about 100 lbf', () => {
    const { straight } = anchorStrength(practice('yellow-poplar', 0.25), SETTINGS);
    if (straight.kind !== 'estimate') throw new Error('no estimate');
    expect(at(plot.median[0] ?? [], inches(0.25))).toBeCloseTo(straight.medianN, 9);
    expect(at(plot.lower[0] ?? [], inches(0.25))).toBeCloseTo(straight.lowerN, 9);
    expect(lbf(straight.medianN)).toBeGreaterThan(90);
    expect(lbf(straight.medianN)).toBeLessThan(110);
  });

  test('is silent under 3/16 in and over 1 1/2 in, and says why', () => {
    expect(plot.silent.map(({ reasons }) => reasons)).toEqual([['embedment-outside'], ['embedment-outside']]);
    expect(plot.silent[0]?.fromMm).toBe(0);
    expect(plot.silent[0]?.toMm).toBeCloseTo(inches(0.19) - 0.1, 4);
    expect(plot.silent[1]?.fromMm).toBeCloseTo(inches(1.5), 4);
    expect(plot.silent[1]?.toMm).toBeCloseTo(plot.deepestMm, 9);
    expect(plot.median).toHaveLength(1);
  });

  test('never falls with depth, the lower value under the middle', () => {
    const [median = [], lower = []] = [plot.median[0], plot.lower[0]];
    for (const [i, point] of median.entries()) {
      expect(point.loadN).toBeGreaterThanOrEqual((median[i - 1]?.loadN ?? 0) - 1e-9);
      expect(lower[i]?.loadN ?? Number.NaN).toBeLessThan(point.loadN);
    }
  });

  test('has every published curve over the whole depth, the handbook screw of 138.5 lbf per half inch of 0.1 in among them', () => {
    expect(plot.published.length).toBeGreaterThanOrEqual(10);
    for (const { points } of plot.published) expect(points).toHaveLength(13);
    const screw = plot.published.find(({ id }) => id === 'wood-screw')?.points ?? [];
    // 15700 G^2 D L with G 0.42 and the pair's .082 in.
    expect(lbf(at(screw, inches(0.5)))).toBeCloseTo(15700 * 0.42 ** 2 * 0.082 * 0.5, 0);
  });

  test('with an angled load has a third curve, never above the straight one', () => {
    expect(plot.lowerAtAngle).toEqual([]);
    const aslant = depthPlot(practice('yellow-poplar', 0.5, { loadAngleDeg: 60 }), SETTINGS);
    for (const [i, point] of (aslant.lowerAtAngle[0] ?? []).entries()) {
      expect(point.loadN).toBeLessThanOrEqual((aslant.lower[0]?.[i]?.loadN ?? 0) + 1e-9);
    }
    expect(aslant.lowerAtAngle[0]?.length).toBe(aslant.lower[0]?.length);
  });

  test('ends where the shank leaves the body', () => {
    const body = bodyOf(bodyShape('popper', { lengthMm: 60, heightMm: 20, widthMm: 20 }));
    const path = shankPath(body, { face: 'belly', xMm: 30, zMm: 0, slantDeg: 0 });
    if (!path.ok) throw new Error(path.code);
    const cover = coverProfile(body, path.path, 60);
    const inBody = depthPlot(practice('yellow-poplar', 0.5, { cover }), SETTINGS);
    expect(inBody.silent.at(-1)?.reasons).toContain('shank-leaves-body');
    const end = inBody.median.at(-1)?.at(-1)?.at ?? 0;
    expect(end).toBeCloseTo(path.path.throughMm, 4);
  });

  test('the limit of the wire is the lower value of its eye, at any depth', () => {
    const eye = anchorStrength(practice('yellow-poplar', 0.5), SETTINGS).ways.find(({ way }) => way === 'wire-in-eye');
    expect(plot.wireLimitN).toBe(eye?.result.kind === 'estimate' ? eye.result.lowerN : null);
  });
});

describe('strength against the angle of the load', () => {
  const design = practice('yellow-poplar', 0.5);
  const plot = anglePlot(design, SETTINGS);

  test('begins at the straight strength and never rises', () => {
    const { straight } = anchorStrength(design, SETTINGS);
    expect(plot.lower[0]?.loadN).toBe(straight.kind === 'estimate' ? straight.lowerN : null);
    for (const [i, point] of plot.lower.entries()) {
      expect(point.loadN).toBeLessThanOrEqual((plot.lower[i - 1]?.loadN ?? Number.POSITIVE_INFINITY) + 1e-6);
    }
    expect(plot.lower.map((point) => point.at)).toEqual(Array.from({ length: 31 }, (_, i) => 3 * i));
  });

  test('is the least of the ultimate ways at every angle but the straight one', () => {
    for (const point of plot.lower.slice(1)) {
      const ultimate = plot.ways.filter(({ role }) => role === 'ultimate').map(({ points }) => at(points, point.at));
      expect(point.loadN).toBeCloseTo(Math.min(...ultimate.filter(Number.isFinite)), 9);
    }
  });

  test('shows the first bending as serviceability, least square to the shank', () => {
    const bends = plot.ways.find(({ way }) => way === 'first-bending');
    expect(bends?.role).toBe('serviceability');
    expect(at(bends?.points ?? [], 90)).toBeLessThan(at(bends?.points ?? [], 0));
  });

  test('of a screw eye has its own ways', () => {
    const { wood } = design;
    const eye = anglePlot(
      {
        kind: 'screw-eye',
        wood,
        threadDiameterMm: 2.7,
        threadMm: 12,
        eye: { insideMm: 5, isClosed: true },
        wire: null,
        statedStrengthN: 400,
        cover: null,
        loadAngleDeg: 0,
      },
      SETTINGS,
    );
    expect(eye.ways.map(({ way }) => way)).toEqual(['screw-side', 'screw-eye-stated', 'first-bending']);
  });
});
