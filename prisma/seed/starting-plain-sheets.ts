import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { commonPractice, fromMemory } from './figure-source';

/*
 * Glues and coats that do not cure by a reaction that follows temperature alone: moisture, evaporation or light rules
 * them, so their hours are plain hours, which run on when it is cold. The least temperature is the one below which
 * they are commonly said to perform poorly: the bench warns below it. From each range the cautious end is taken.
 */

const PLAIN = { kind: 'plain-hours' } as const;

const RATE_SOURCE = commonPractice('not a reaction that follows temperature alone, so the hours are plain hours.');
const COLD_SOURCE = commonPractice('finishes are said to perform poorly below 10 degC and best at 19 to 28 degC.');

export const cyanoacrylate: AdhesiveSheet = {
  referenceC: 21,
  rateLaw: PLAIN,
  minCureC: 10,
  potLife: [],
  milestoneHours: { handle: 0.05, sand: 2, paint: 24, 'pull-test': 24, ship: 24 },
  sources: {
    rateLaw: RATE_SOURCE,
    minCureC: COLD_SOURCE,
    handle: commonPractice('holds after 10 to 60 s; three minutes are taken. Dry air and acid woods slow it down.'),
    sand: fromMemory('minutes to hours; two hours are taken.'),
    paint: fromMemory('24 h.'),
    'pull-test': fromMemory('24 h.'),
    ship: fromMemory('24 h.'),
  },
};

export const onePartPolyurethane: AdhesiveSheet = {
  referenceC: 21,
  rateLaw: PLAIN,
  minCureC: 10,
  potLife: [],
  milestoneHours: { handle: 4, sand: 24, paint: 24, 'pull-test': 24, ship: 24 },
  sources: {
    rateLaw: RATE_SOURCE,
    minCureC: COLD_SOURCE,
    handle: commonPractice('clamps off after several hours; 4 are taken. Very dry wood needs moisture.'),
    sand: fromMemory('24 h.'),
    paint: fromMemory('24 h.'),
    'pull-test': fromMemory('24 h.'),
    ship: fromMemory('24 h.'),
  },
};

export const moistureCureUrethane: AdhesiveSheet = {
  referenceC: 25,
  rateLaw: PLAIN,
  minCureC: 10,
  potLife: [],
  milestoneHours: { handle: 12, sand: 24, 'recoat-from': 4, 'recoat-by': 24, paint: 24, ship: 168 },
  recoatCapHours: 24,
  recoatRemedy: 'Sand dull, wipe off the dust, then coat.',
  sources: {
    rateLaw: RATE_SOURCE,
    minCureC: commonPractice('free of tack after 3 h at 25 degC and 50 % humidity, not to be used below 10 degC.'),
    handle: fromMemory('sandable after 12 to 24 h: what can be sanded at the earliest can be handled.'),
    sand: fromMemory('12 to 24 h; the longest is taken.'),
    'recoat-from': fromMemory('recoats from 4 h.'),
    'recoat-by': fromMemory('recoats without sanding up to 24 h.'),
    paint: fromMemory('24 h.'),
    ship: fromMemory('5 to 7 days; the longest is taken.'),
  },
};

export const lacquer: AdhesiveSheet = {
  referenceC: 21,
  rateLaw: PLAIN,
  minCureC: 10,
  potLife: [],
  milestoneHours: { handle: 2, sand: 24, 'recoat-from': 2, ship: 168 },
  sources: {
    rateLaw: RATE_SOURCE,
    minCureC: COLD_SOURCE,
    handle: fromMemory('dry to touch after 5 to 15 min; two hours are taken.'),
    sand: fromMemory('2 to 24 h; the longest is taken.'),
    'recoat-from': fromMemory(
      '30 to 120 min between coats; the longest is taken. The window does not close: a new coat dissolves the old one.',
    ),
    ship: fromMemory('3 to 7 days and more; 7 are taken.'),
  },
};

export const uvAcrylate: AdhesiveSheet = {
  referenceC: 21,
  rateLaw: PLAIN,
  minCureC: 10,
  potLife: [],
  milestoneHours: { handle: 0.1, sand: 0.1, 'recoat-from': 0.1 },
  sources: {
    rateLaw: RATE_SOURCE,
    minCureC: COLD_SOURCE,
    handle: fromMemory(
      'cures at the dose of light its sheet states, on lit faces only; six minutes under the lamp, turning, are taken.',
    ),
    sand: fromMemory(
      'after cure, once the tacky skin that air leaves is wiped off; six minutes under the lamp are taken.',
    ),
    'recoat-from': fromMemory(
      'at once after cure, or after wiping and scuffing; six minutes under the lamp are taken.',
    ),
  },
};
