import type { AdhesiveStrengthSheet } from '@/lib/materials/adhesive-strength-sheet';
import { published } from '@/lib/materials/figure-source';
import { commonPractice, fromMemory } from './figure-source';

/*
 * The strength side of the general classes of glue. How well they hold is not here: before the shop's own pulls only
 * slow epoxy has evidence, and the rules say so.
 */

const EPOXY_GAP = published(
  'Tannert, Vallée, Hehl 2012 (doi 10.1007/s00226-011-0423-1, abstract): epoxy joints in spruce as strong from 0.5 to 2 mm of glue; 1 mm is taken',
);
const EPOXY_WARMTH = fromMemory('room-temperature epoxy softens from 40 to 60 degC; the lower is taken.');

export const slowEpoxyStrength: AdhesiveStrengthSheet = {
  bondClass: 'slow-epoxy',
  maxGapMm: 1,
  water: 'immersion',
  maxServiceC: 40,
  sources: {
    maxGapMm: EPOXY_GAP,
    water: commonPractice('slow epoxy under a closed coat stands immersion.'),
    maxServiceC: EPOXY_WARMTH,
  },
};

export const fastEpoxyStrength: AdhesiveStrengthSheet = {
  bondClass: 'fast-epoxy',
  maxGapMm: 1,
  water: 'splash',
  maxServiceC: 40,
  sources: {
    maxGapMm: EPOXY_GAP,
    water: commonPractice('five-minute epoxies take up water and soften.'),
    maxServiceC: EPOXY_WARMTH,
  },
};

export const polyurethaneStrength: AdhesiveStrengthSheet = {
  bondClass: 'polyurethane',
  maxGapMm: 0.2,
  water: 'splash',
  sources: {
    maxGapMm: commonPractice('its foam fills wider gaps, but does not carry.'),
    water: commonPractice('weatherproof, not made to stay under water.'),
  },
};

export const cyanoacrylateStrength: AdhesiveStrengthSheet = {
  bondClass: 'cyanoacrylate',
  maxGapMm: 0.1,
  water: 'splash',
  sources: {
    maxGapMm: commonPractice('thin grades want contact; a tenth of a millimetre is taken.'),
    water: commonPractice('lets go after long immersion.'),
  },
};
