import type { AdhesiveSheet, FigureName } from '@/lib/cure/adhesive-sheet';
import type { FigureSource } from '@/lib/materials/figure-source';

export const INVENTED: FigureSource = {
  kind: 'own',
  text: 'Invented for the demo workshop: no product has these figures.',
};

function invented(names: readonly FigureName[]): AdhesiveSheet['sources'] {
  return Object.fromEntries(names.map((name) => [name, INVENTED]));
}

export const demoEpoxy30: AdhesiveSheet = {
  referenceC: 22,
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 48, central: 55, high: 62 } },
  minCureC: 10,
  potLife: [
    { minutes: 30, massG: 20, temperatureC: 22, criterion: 'cup-reaches-40C-less-margin' },
    { minutes: 24, massG: 60, temperatureC: 22, criterion: 'cup-reaches-40C-less-margin' },
  ],
  milestoneHours: { handle: 10, sand: 20, paint: 36, 'pull-test': 72, ship: 120 },
  maxMassG: 80,
  densityA: 1.15,
  densityB: 0.98,
  ratio: { partsA: 2, partsB: 1, basis: 'volume' },
  sources: invented([
    'rateLaw',
    'minCureC',
    'potLife',
    'density',
    'ratio',
    'handle',
    'sand',
    'paint',
    'pull-test',
    'ship',
  ]),
};

export const demoEpoxy5: AdhesiveSheet = {
  referenceC: 22,
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } },
  minCureC: 10,
  potLife: [{ minutes: 5, massG: 5, temperatureC: 22, criterion: 'gel' }],
  milestoneHours: { handle: 0.5, sand: 3, paint: 24, 'pull-test': 24, ship: 24 },
  maxMassG: 20,
  densityA: 1.17,
  densityB: 1.12,
  ratio: { partsA: 1, partsB: 1, basis: 'volume' },
  sources: invented([
    'rateLaw',
    'minCureC',
    'potLife',
    'density',
    'ratio',
    'handle',
    'sand',
    'paint',
    'pull-test',
    'ship',
  ]),
};

export const demoEpoxy60: AdhesiveSheet = {
  referenceC: 22,
  rateLaw: { kind: 'doubling', doublingC: { low: 8.5, central: 10, high: 12 } },
  minCureC: 12,
  potLife: [{ minutes: 58, massG: 50, temperatureC: 22, criterion: 'viscosity-doubled' }],
  milestoneHours: { handle: 16, sand: 28, paint: 48, 'pull-test': 96, ship: 168 },
  maxMassG: 150,
  densityA: 1.14,
  densityB: 0.97,
  ratio: { partsA: 100, partsB: 45, basis: 'mass' },
  sources: invented([
    'rateLaw',
    'minCureC',
    'potLife',
    'density',
    'ratio',
    'handle',
    'sand',
    'paint',
    'pull-test',
    'ship',
  ]),
};

export const demoTopcoat: AdhesiveSheet = {
  referenceC: 22,
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 48, central: 55, high: 62 } },
  minCureC: 10,
  potLife: [{ minutes: 40, massG: 60, temperatureC: 22, criterion: 'thin-film-workable' }],
  milestoneHours: { handle: 10, sand: 18, 'recoat-from': 2, 'recoat-by': 24, paint: 18, 'pull-test': 72, ship: 72 },
  recoatCapHours: 24,
  recoatRemedy: 'Wash with water, dry, sand dull with fine paper and wipe off the dust before the next coat.',
  maxMassG: 150,
  densityA: 1.12,
  densityB: 1.0,
  ratio: { partsA: 1, partsB: 1, basis: 'volume' },
  sources: invented([
    'rateLaw',
    'minCureC',
    'potLife',
    'density',
    'ratio',
    'handle',
    'sand',
    'recoat-from',
    'recoat-by',
    'paint',
    'pull-test',
    'ship',
  ]),
};
