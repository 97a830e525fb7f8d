import type { Body } from '@/lib/geometry/body';
import { bodySolid } from '@/lib/geometry/body-solid';
import { submergedPart } from '@/lib/geometry/submerged';

/** Something fixed to the body or in it. */
export interface CarriedItem {
  readonly massG: number;
  /** From the nose, and above the axis; a hanging item counts where it hangs from. */
  readonly xMm: number;
  readonly zMm: number;
  readonly volumeMl: number;
  /** In a hole of the body, in place of wood; otherwise in the water outside. */
  readonly isInside: boolean;
}

/** How the body lies in water when it has come to rest. */
export interface Flotation {
  readonly massG: number;
  readonly bodyVolumeMl: number;
  /** Centre of all weight, less what the water carries of the items outside. */
  readonly gravityXMm: number;
  readonly gravityZMm: number;
  readonly floats: boolean;
  /** Nose up positive; 90 or -90: it stands on end. For a body that sinks, the angle it sinks at. */
  readonly trimDeg: number;
  /** Whether the trim is within `LEVEL_DEG`. */
  readonly isLevel: boolean;
  /** Waterline in the body's directions: z = height + slope x; null when it sinks or stands on end. */
  readonly waterline: { readonly heightMm: number; readonly slope: number } | null;
  /** Share of the body's volume under water. */
  readonly submergedShare: number;
}

/** Chosen: within this a body counts as floating level. */
export const LEVEL_DEG = 5;
const STEEPEST_DEG = 88;
const SCAN_STEP_DEG = 4;
export const FRESH_WATER_KG_M3 = 1000;

/**
 * How a body of wood of `woodKgM3` floats with what it carries: its weight, whether it floats, and the trim at which
 * buoyancy stands under weight. It is laid level on the water and turns to the first rest it meets.
 *
 * Throws RangeError unless the densities are positive and every item is finite, of no negative mass or volume.
 */
export function flotation(
  body: Body,
  woodKgM3: number,
  items: readonly CarriedItem[],
  waterKgM3 = FRESH_WATER_KG_M3,
): Flotation {
  const load = weightOf(body, woodKgM3, items, waterKgM3);
  const solid = bodySolid(body);
  const full = solid.volumeMl * 1000;
  // Items lighter than water may carry the whole body: it then lies on the water.
  const needed = Math.max((load.liftG / waterKgM3) * 1e6, 1e-6 * full);
  const common = {
    massG: load.massG,
    bodyVolumeMl: solid.volumeMl,
    gravityXMm: load.xMm,
    gravityZMm: load.zMm,
  };
  if (needed >= full) {
    const trim = degrees(Math.atan2(load.xMm - solid.centreXMm, -load.zMm));
    return { ...common, floats: false, trimDeg: trim, isLevel: isLevel(trim), waterline: null, submergedShare: 1 };
  }
  const trim = restingTrim(body, needed, load);
  const stands = Math.abs(trim) > STEEPEST_DEG;
  const slope = Math.tan(radians(trim));
  return {
    ...common,
    floats: true,
    trimDeg: stands ? Math.sign(trim) * 90 : trim,
    isLevel: isLevel(trim),
    waterline: stands ? null : { heightMm: waterHeight(body, slope, needed), slope },
    submergedShare: needed / full,
  };
}

interface Load {
  readonly massG: number;
  /** Weight that the body's own buoyancy must carry, as mass. */
  readonly liftG: number;
  readonly xMm: number;
  readonly zMm: number;
}

function weightOf(body: Body, woodKgM3: number, items: readonly CarriedItem[], waterKgM3: number): Load {
  if (!(woodKgM3 > 0 && waterKgM3 > 0))
    throw new RangeError(`flotation needs densities, got ${woodKgM3}, ${waterKgM3}`);
  const solid = bodySolid(body);
  const woodG = (solid.volumeMl * woodKgM3) / 1000;
  let massG = woodG;
  let liftG = woodG;
  let momentX = woodG * solid.centreXMm;
  let momentZ = 0;
  for (const item of items) {
    const { massG: mass, volumeMl, xMm, zMm, isInside } = item;
    if (!(mass >= 0 && volumeMl >= 0 && [mass, volumeMl, xMm, zMm].every(Number.isFinite))) {
      throw new RangeError(`flotation needs finite items without negative mass, got ${JSON.stringify(item)}`);
    }
    const replaced = (volumeMl * (isInside ? woodKgM3 : waterKgM3)) / 1000;
    massG += mass - (isInside ? replaced : 0);
    liftG += mass - replaced;
    momentX += (mass - replaced) * xMm;
    momentZ += (mass - replaced) * zMm;
  }
  return { massG, liftG, xMm: momentX / liftG, zMm: momentZ / liftG };
}

/** Buoyancy's lead over weight along the water: positive pushes the tail up and the nose down. */
function lead(body: Body, trimDeg: number, needed: number, load: Load): number {
  const angle = radians(trimDeg);
  const slope = Math.tan(angle);
  const part = submergedPart(body, waterHeight(body, slope, needed), slope);
  return (part.centreXMm - load.xMm) * Math.cos(angle) + (part.centreZMm - load.zMm) * Math.sin(angle);
}

function restingTrim(body: Body, needed: number, load: Load): number {
  const atLevel = lead(body, 0, needed, load);
  if (atLevel === 0) return 0;
  const way = atLevel < 0 ? 1 : -1;
  let before = 0;
  for (let trim = SCAN_STEP_DEG; trim <= STEEPEST_DEG; trim += SCAN_STEP_DEG) {
    const now = way * trim;
    if (lead(body, now, needed, load) * way >= 0)
      return turned(before, now, (angle) => lead(body, angle, needed, load));
    before = now;
  }
  return way * 90;
}

/** The trim between two at which the lead changes sign: false position, the standing end halved (Illinois). */
function turned(from: number, to: number, f: (trim: number) => number): number {
  let [low, high] = [from, to];
  let [fLow, fHigh] = [f(low), f(high)];
  let middle = high;
  for (let turn = 0; turn < 60 && fHigh !== fLow; turn++) {
    middle = high - (fHigh * (high - low)) / (fHigh - fLow);
    const fMiddle = f(middle);
    if (Math.abs(fMiddle) < 1e-9 || Math.abs(high - low) < 1e-9) break;
    if (fMiddle > 0 === fHigh > 0) {
      fLow *= 0.5;
    } else {
      low = high;
      fLow = fHigh;
    }
    high = middle;
    fHigh = fMiddle;
  }
  return middle;
}

/** Height of the water at x = 0, at a slope, under which `needed` mm3 of the body lie: Newton's method in a bracket. */
function waterHeight(body: Body, slope: number, needed: number): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { xMm, halfHeightMm } of body.stations) {
    low = Math.min(low, -halfHeightMm - slope * xMm);
    high = Math.max(high, halfHeightMm - slope * xMm);
  }
  let height = 0.5 * (low + high);
  for (let turn = 0; turn < 80; turn++) {
    const { volumeMm3, cutMm2 } = submergedPart(body, height, slope);
    const excess = volumeMm3 - needed;
    if (Math.abs(excess) < 1e-10 * needed || high - low < 1e-12) return height;
    if (excess > 0) high = height;
    else low = height;
    const next = height - excess / cutMm2;
    height = next > low && next < high ? next : 0.5 * (low + high);
  }
  return height;
}

function isLevel(trimDeg: number): boolean {
  return Math.abs(trimDeg) <= LEVEL_DEG;
}

function radians(degreesOfAngle: number): number {
  return (degreesOfAngle * Math.PI) / 180;
}

function degrees(radiansOfAngle: number): number {
  return (radiansOfAngle * 180) / Math.PI;
}
