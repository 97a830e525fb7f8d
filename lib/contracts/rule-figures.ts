import { z } from 'zod';
import type { RuleFigures } from '@/lib/spec/rule-figures';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { numberText } from './number-text';
import { lengthNeed, temperatureNeed } from './quantity-need';
import { quantityText } from './quantity-text';

/** Least and greatest of each figure that a shop may set. Chosen: wide enough for any workshop, narrow enough for slips. */
const RANGE = {
  requiredFactor: [1, 10],
  lowerShare: [0.001, 0.25],
  leastEmbedmentMm: [3, 60],
  incrementMm: [0.1, 6.35],
  drillSlackMm: [0, 10],
  woodBelowMm: [0, 20],
  throughWireBelowGravity: [0.05, 0.6],
  serviceTemperatureC: [0, 80],
  calibrationMaxAgeDays: [7, 3_650],
  surgeFactor: [1, 5],
  liftFactor: [1, 5],
  saturationMm: [8, 80],
  endGrainBearing: [0.1, 1],
} as const satisfies Partial<Record<keyof RuleFigures, readonly [number, number]>>;

const COMBINATIONS = ['quadratic', 'hankinson'] as const;

function within([least, most]: readonly [number, number]) {
  return z.number().min(least).max(most);
}

/** The figures of the rules as they are stored with the shop. */
export const ruleFiguresSchema: z.ZodType<RuleFigures> = z.strictObject({
  requiredFactor: within(RANGE.requiredFactor),
  lowerShare: within(RANGE.lowerShare),
  leastEmbedmentMm: within(RANGE.leastEmbedmentMm),
  incrementMm: within(RANGE.incrementMm),
  drillSlackMm: within(RANGE.drillSlackMm),
  woodBelowMm: within(RANGE.woodBelowMm),
  throughWireBelowGravity: within(RANGE.throughWireBelowGravity),
  serviceTemperatureC: within(RANGE.serviceTemperatureC),
  calibrationMaxAgeDays: within(RANGE.calibrationMaxAgeDays),
  surgeFactor: within(RANGE.surgeFactor),
  liftFactor: within(RANGE.liftFactor),
  saturationMm: within(RANGE.saturationMm),
  endGrainBearing: within(RANGE.endGrainBearing),
  combination: z.enum(COMBINATIONS),
});

/** The form of the rules' figures, in the shop's units; the lower share in percent. */
export function ruleFiguresFormSchema(units: UnitChoice) {
  const number = (name: keyof typeof RANGE) => numberText(RANGE[name][0], RANGE[name][1]);
  const length = (name: keyof typeof RANGE) => quantityText(lengthNeed(units, RANGE[name][0], RANGE[name][1]));
  return z.strictObject({
    requiredFactor: number('requiredFactor'),
    lowerShare: numberText(RANGE.lowerShare[0] * 100, RANGE.lowerShare[1] * 100).transform((percent) => percent / 100),
    leastEmbedmentMm: length('leastEmbedmentMm'),
    incrementMm: length('incrementMm'),
    drillSlackMm: length('drillSlackMm'),
    woodBelowMm: length('woodBelowMm'),
    throughWireBelowGravity: number('throughWireBelowGravity'),
    serviceTemperatureC: quantityText(
      temperatureNeed(units, RANGE.serviceTemperatureC[0], RANGE.serviceTemperatureC[1]),
    ),
    calibrationMaxAgeDays: number('calibrationMaxAgeDays'),
    surgeFactor: number('surgeFactor'),
    liftFactor: number('liftFactor'),
    saturationMm: length('saturationMm'),
    endGrainBearing: number('endGrainBearing'),
    combination: z.enum(COMBINATIONS, { error: 'Choose how straight and sideways load are put together.' }),
  });
}
