import type { CourseSettings } from '@/lib/cure/course';
import { cureLanes } from '@/lib/cure/cure-lanes';
import { NO_READINGS } from '@/lib/cure/reading-series';
import { release } from '@/lib/cure/release';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import type { Digest } from '@/lib/pulltest/pull-design';
import { pullDesign } from '@/lib/pulltest/pull-design';
import type { PullMode } from '@/lib/pulltest/pull-mode';
import { designOfPlan, type PullPlan } from '@/lib/pulltest/pull-plan';
import { inches, poundsForce } from '@/lib/units/force-and-length';
import { HOUR_MS, type Instant, MINUTE_MS } from '@/lib/units/instant';
import { SOFT_WIRE } from './demo-anchors';
import { demoId } from './demo-id';
import { EPOXY_30 } from './demo-materials';
import { IDA } from './demo-people';
import { demoEpoxy30 } from './demo-sheets';
import { type DemoTimes, dayFromNow, daysAgo } from './demo-times';

const SERIES = demoId('pull-series');
const SCALE = demoId('scale');
/** What the scale shows at most. */
const SCALE_LBF = 220;

const PLAN: PullPlan = {
  depthsMm: [1 / 4, 3 / 8, 1 / 2, 5 / 8, 3 / 4].map(inches),
  factor: 'none',
  conditions: [
    {
      name: 'Basswood, Demo epoxy, 30 minutes, soft stainless wire of 1.0 mm',
      woodMaterialId: 'start-basswood',
      adhesiveMaterialId: EPOXY_30,
      wireMaterialId: SOFT_WIRE,
      wireDiameterMm: 1,
      bitDiameterMm: inches(3 / 32),
    },
  ],
  mixes: 3,
  seed: 'demo 1',
  order: 'all',
  question: 'anchorage',
  goal: { demandN: poundsForce(60), stepMm: inches(1 / 16), content: 0.95, confidence: 0.75 },
  board: { lengthMm: inches(12), widthMm: inches(4), thicknessMm: inches(1.5), edgeMm: 25.4, spacingMm: inches(1.25) },
};

type Reading = readonly [loadLbf: number, mode: PullMode];

/** Invented: by mix, from the shallowest to the deepest. The third cup reads low. */
const READINGS: { readonly [mix: string]: readonly Reading[] } = {
  A: [
    [58, 'slid-out'],
    [92, 'wood-sleeve'],
    [117, 'wood-sleeve'],
    [151, 'wood-sleeve'],
    [176, 'split'],
  ],
  B: [
    [63, 'slid-out'],
    [86, 'wood-sleeve'],
    [126, 'wood-sleeve'],
    [143, 'wood-sleeve'],
    [170, 'wire-broke'],
  ],
  C: [
    [49, 'slid-out'],
    [76, 'slid-out'],
    [98, 'slid-out'],
    [124, 'wood-sleeve'],
    [139, 'wood-sleeve'],
  ],
};

/** The finished series of the demo workshop as rows: five depths in three mixes, glued a week before it was pulled. */
export function demoPulls(times: DemoTimes, settings: CourseSettings, digest: Digest) {
  const design = pullDesign(designOfPlan(PLAN), digest);
  if (!design.ok) throw new Error('the plan of the demo series cannot be made');
  const checkedOn = dayFromNow(times, -40);
  const mixedAt = new Map(
    design.mixes.map((mix, index) => [mix, daysAgo(times, 30, '19:00') + index * 25 * MINUTE_MS]),
  );
  const setAtOf = (mix: string) => (mixedAt.get(mix) ?? 0) + 12 * MINUTE_MS;
  const pulledFrom = daysAgo(times, 22, '18:30');
  const course = temperatureCourse(NO_READINGS, settings, daysAgo(times, 31, '12:00'), times.nowAt);
  const lanes = cureLanes(course, demoEpoxy30);
  const clock = (mix: string, at: Instant) => {
    const joint = { sheet: demoEpoxy30, mixedAt: mixedAt.get(mix) ?? 0, setAt: setAtOf(mix) };
    const released = release(joint, lanes, 'pull-test');
    return {
      releasedAt: released.kind === 'release' ? new Date(released.latestAt) : null,
      cureHours: lanes.central.ageBetween(joint.setAt, at),
    };
  };
  return {
    scale: {
      id: SCALE,
      name: 'Crane scale',
      greatestN: poundsForce(SCALE_LBF),
      checkedOn,
      note: 'Checked with a weighed bucket of sand.',
      createdAt: new Date(times.nowAt),
    },
    series: {
      id: SERIES,
      name: 'Is half an inch enough?',
      kind: 'design',
      plan: PLAN,
      status: 'closed',
      note: 'Invented for the demo workshop: no real joint holds what stands here.',
      createdAt: new Date(daysAgo(times, 31, '20:00')),
      closedAt: new Date(pulledFrom + 3 * HOUR_MS),
    },
    mixes: design.mixes.map((name, position) => ({
      id: mixId(name),
      seriesId: SERIES,
      name,
      position,
      adhesiveMaterialId: EPOXY_30,
      adhesiveLotCode: 'E30-A-0412',
      sheet: demoEpoxy30,
      mixedAt: new Date(mixedAt.get(name) ?? 0),
      setAt: new Date(setAtOf(name)),
      note: name === 'C' ? 'The last of the hardener, cold from the shelf.' : '',
    })),
    specimens: design.specimens.map(({ id, mix, condition, depthMm, pullOrder }) => ({
      id: specimenId(id),
      seriesId: SERIES,
      code: id,
      mixId: mixId(mix),
      condition,
      depthMm,
      pullOrder,
    })),
    pulls: design.specimens.map(({ id, mix, depthMm, pullOrder }) => {
      const [loadLbf, mode] = READINGS[mix]?.[PLAN.depthsMm.indexOf(depthMm)] ?? [0, 'held'];
      const pulledAt = pulledFrom + pullOrder * 9 * MINUTE_MS;
      return {
        id: demoId(`pull-${id.toLowerCase()}`),
        key: demoId(`pull-${id.toLowerCase()}`),
        seriesId: SERIES,
        specimenId: specimenId(id),
        number: pullOrder,
        loadN: poundsForce(loadLbf),
        isLowerBound: false,
        mode,
        leftDamage: false,
        angleDeg: 0,
        pulledAt: new Date(pulledAt),
        recordedAt: new Date(pulledAt),
        personId: IDA,
        ...clock(mix, pulledAt),
        scaleId: SCALE,
        scaleName: 'Crane scale',
        scaleGreatestN: poundsForce(SCALE_LBF),
        scaleCheckedOn: checkedOn,
        excludedNote: '',
        note: '',
      };
    }),
  };
}

function mixId(name: string): string {
  return demoId(`pull-mix-${name.toLowerCase()}`);
}

function specimenId(code: string): string {
  return demoId(`specimen-${code.toLowerCase()}`);
}
