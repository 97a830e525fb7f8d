import type { AdhesiveSheet, FigureSource, RateLaw } from '@/lib/cure/adhesive-sheet';
import { commonPractice, fromMemory } from './figure-source';

/*
 * General figures of four classes of two-part epoxy, to start with until the maker enters the sheet of the product in
 * the cup. From each range that is commonly printed the cautious end is taken: the longest time for "ready", the
 * shortest for "still open", all of them read as if printed at the warm end (25 degC) of "room temperature".
 */

const ENERGY_SOURCE: FigureSource = {
  kind: 'published',
  text:
    'Amine-cured epoxies: 55 to 60 kJ/mol in Thermochimica Acta 447 (2006) 167-177, 44 to 57 in ' +
    'Barral et al., J. Appl. Polym. Sci. 56 (1995) 1029-1037 (abstracts). The middle and the box of 45 to 65 are ' +
    'chosen. Two temperatures from your own sheet are better.',
};

const RATE: RateLaw = { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } };

const MIN_CURE_SOURCE = commonPractice(
  'most room-temperature systems are called dormant below about 13 degC (55 degF), some cure on at 5 to 10 degC; ' +
    'the higher figure is taken, so that cold hours do not count as cure.',
);

const WINDOW_REMEDY = 'Wash with water and a pad, dry, sand dull, wipe off the dust, then coat.';

export const fiveMinuteEpoxy: AdhesiveSheet = {
  referenceC: 25,
  rateLaw: RATE,
  minCureC: 13,
  potLife: [{ minutes: 4, massG: 20, temperatureC: 20, criterion: 'gel' }],
  milestoneHours: { handle: 0.5, sand: 4, paint: 24, 'pull-test': 24, ship: 24 },
  maxMassG: 50,
  sources: {
    rateLaw: ENERGY_SOURCE,
    minCureC: MIN_CURE_SOURCE,
    potLife: commonPractice(
      'the label is a gel time of 4 to 6 min, not a working time; 4 is taken, as at 20 degC. The mass of 20 g is from memory.',
    ),
    handle: fromMemory('holds by itself after 10 to 20 min, free of tack after 15 to 30 min; half an hour is taken.'),
    sand: fromMemory('2 to 4 h; the longest is taken.'),
    paint: fromMemory('24 h.'),
    'pull-test': commonPractice('full strength after up to 24 h.'),
    ship: commonPractice('full strength after up to 24 h.'),
  },
};

export const fastLaminatingEpoxy: AdhesiveSheet = {
  referenceC: 25,
  rateLaw: RATE,
  minCureC: 13,
  potLife: [{ minutes: 8, massG: 100, temperatureC: 21, criterion: 'unknown' }],
  milestoneHours: { handle: 8, sand: 16, 'recoat-from': 4, 'recoat-by': 8, paint: 168, 'pull-test': 168, ship: 168 },
  recoatCapHours: 8,
  recoatRemedy: WINDOW_REMEDY,
  maxMassG: 100,
  sources: {
    rateLaw: ENERGY_SOURCE,
    minCureC: MIN_CURE_SOURCE,
    potLife: commonPractice(
      'first reaction after 8 to 12 min at 21 degC; the shortest is taken. The mass of 100 g is the usual test cup.',
    ),
    handle: fromMemory('clamps off after 4 to 8 h; the longest is taken.'),
    sand: fromMemory('"overnight", read as 16 h.'),
    'recoat-from': fromMemory('recoats without sanding from about 3 h, free of tack from 4 h; the later is taken.'),
    'recoat-by': fromMemory('recoats without sanding up to about 8 h, by the clock, however cold.'),
    paint: fromMemory('3 to 7 days; the longest is taken.'),
    'pull-test': fromMemory('4 to 7 days to full strength; the longest is taken.'),
    ship: fromMemory('4 to 7 days to full strength; the longest is taken.'),
  },
};

export const slowEpoxy: AdhesiveSheet = {
  referenceC: 25,
  rateLaw: RATE,
  minCureC: 13,
  potLife: [{ minutes: 20, massG: 100, temperatureC: 21, criterion: 'unknown' }],
  milestoneHours: { handle: 12, sand: 24, 'recoat-from': 8, 'recoat-by': 24, paint: 168, 'pull-test': 168, ship: 168 },
  recoatCapHours: 24,
  recoatRemedy: WINDOW_REMEDY,
  maxMassG: 200,
  sources: {
    rateLaw: ENERGY_SOURCE,
    minCureC: MIN_CURE_SOURCE,
    potLife: commonPractice(
      'first reaction after 20 to 40 min at 21 degC; the shortest is taken. The mass of 100 g is the usual test cup.',
    ),
    handle: fromMemory('clamps off after 6 to 12 h; the longest is taken. No stress for 24 h.'),
    sand: commonPractice('after a night, or 24 h; the longest is taken.'),
    'recoat-from': fromMemory('recoats without sanding from about 6 h, free of tack after 6 to 15 h; 8 h is taken.'),
    'recoat-by': commonPractice(
      'low-blush systems are commonly recoated within 24 h without preparation, by the clock, however cold.',
    ),
    paint: commonPractice('5 to 7 days at 21 degC; the longest is taken.'),
    'pull-test': commonPractice('several days to full strength; 7 are taken.'),
    ship: commonPractice('several days to full strength; 7 are taken.'),
  },
};

export const topcoatEpoxy: AdhesiveSheet = {
  referenceC: 25,
  rateLaw: RATE,
  minCureC: 13,
  potLife: [{ minutes: 30, massG: 100, temperatureC: 20, criterion: 'unknown' }],
  milestoneHours: { handle: 24, sand: 72, 'recoat-from': 8, 'recoat-by': 24, paint: 168, 'pull-test': 168, ship: 168 },
  recoatCapHours: 24,
  recoatRemedy: WINDOW_REMEDY,
  maxMassG: 200,
  sources: {
    rateLaw: ENERGY_SOURCE,
    minCureC: MIN_CURE_SOURCE,
    potLife: fromMemory('30 to 60 min; the shortest is taken, as at 20 degC. The mass of 100 g is the usual test cup.'),
    handle: fromMemory('free of tack after 8 to 24 h; the longest is taken.'),
    sand: fromMemory('24 to 72 h; the longest is taken.'),
    'recoat-from': fromMemory('recoats without sanding from 4 h, free of tack from 8 h; the later is taken.'),
    'recoat-by': fromMemory('recoats without sanding up to 24 h, by the clock, however cold.'),
    paint: fromMemory('7 days.'),
    'pull-test': commonPractice('7 days to full hardness.'),
    ship: commonPractice('7 days to full hardness.'),
  },
};
