import { type FigureSource, fromMemory, published } from '@/lib/materials/figure-source';
import {
  aicherEpoxyMpa,
  aicherPrfMpa,
  dinBondMpa,
  envBondMpa,
  equivalentRodMm,
  glulamHandbookMpa,
  kangasBondMpa,
  MOEHLER_ALLOWABLE_MPA,
  riberholtN,
  steigerMeanMpa,
} from '@/lib/strength/rod-equations';

/** A rod glued in wood, as the published equations ask for it. */
export interface GluedRod {
  readonly rodMm: number;
  readonly holeMm: number;
  readonly lengthMm: number;
  readonly densityKgM3: number;
}

/** One published equation for glued-in rods. */
export interface RodEquation {
  readonly id: string;
  readonly title: string;
  readonly formula: string;
  /** What its result means: an average of tests, a fifth percentile, or an allowable load. */
  readonly basis: 'mean' | 'characteristic' | 'allowable';
  readonly source: FigureSource;
  /** The range it was stated or tested for: wire lies below all of them. */
  readonly range: string;
  readonly loadN: (rod: GluedRod) => number;
}

const LIPPERT = 'summary in Lippert 2002, Univ. Stuttgart, pp. 37-48';

/**
 * Independent equations drawn beside the estimate, so that a maker sees what brackets it. One design-guide power law
 * is left out: at this size it gives twice the practice value, and its constants could not be confirmed.
 */
export const ROD_EQUATIONS: readonly RodEquation[] = [
  {
    id: 'steiger',
    title: 'Steiger, Gehri, Widmann 2007',
    formula: 'pi d_h l × 7.8 (l / (10 d_h))^(-1/3) (rho / 480)^0.6',
    basis: 'mean',
    source: fromMemory('doi 10.1617/s11527-006-9111-2: exponents read, 7.8, 10 and 480 from memory'),
    range: 'M12 to M20, 7.5 to 15 hole diameters deep, epoxy, along the grain',
    loadN: ({ holeMm, lengthMm, densityKgM3 }) =>
      onWall(holeMm, lengthMm, steigerMeanMpa(holeMm, lengthMm, densityKgM3)),
  },
  {
    id: 'env-1995-2',
    title: 'ENV 1995-2',
    formula: 'pi d_equ l × 0.0012 d_equ^-0.2 rho^1.5, d_equ = min(d_h, 1.25 d)',
    basis: 'characteristic',
    source: published(`${LIPPERT}; doi 10.1617/s11527-018-1268-y`),
    range: 'rods of 12 mm and more',
    loadN: ({ rodMm, holeMm, lengthMm, densityKgM3 }) =>
      onWall(equivalentRodMm(rodMm, holeMm), lengthMm, envBondMpa(rodMm, holeMm, densityKgM3)),
  },
  {
    id: 'riberholt-brittle',
    title: 'Riberholt 1988, brittle glue',
    formula: '0.037 rho d l, d the wider of rod and hole',
    basis: 'characteristic',
    source: fromMemory(`form and 200 mm limit read (${LIPPERT}), constants from memory`),
    range: 'rods of 12 to 30 mm in softwood',
    loadN: ({ rodMm, holeMm, lengthMm, densityKgM3 }) =>
      riberholtN(true, Math.max(rodMm, holeMm), lengthMm, densityKgM3),
  },
  {
    id: 'riberholt-tough',
    title: 'Riberholt 1988, tough glue',
    formula: '0.046 rho d l, d the wider of rod and hole',
    basis: 'characteristic',
    source: fromMemory(`form and 200 mm limit read (${LIPPERT}), constants from memory`),
    range: 'rods of 12 to 30 mm in softwood',
    loadN: ({ rodMm, holeMm, lengthMm, densityKgM3 }) =>
      riberholtN(false, Math.max(rodMm, holeMm), lengthMm, densityKgM3),
  },
  {
    id: 'din-1052',
    title: 'E DIN 1052 (1999)',
    formula: 'pi d l × 4.0 MPa below 250 mm',
    basis: 'characteristic',
    source: published(LIPPERT),
    range: 'rods of 6 to 30 mm',
    loadN: ({ holeMm, lengthMm }) => onWall(holeMm, lengthMm, dinBondMpa(lengthMm)),
  },
  {
    id: 'kangas',
    title: 'Kangas 1994',
    formula: 'pi d_h (l - 1.5 d) × 6.5 (1 - (l - 1.5 d) / (100 d))',
    basis: 'characteristic',
    source: published(LIPPERT),
    range: 'threaded rods',
    loadN: ({ rodMm, holeMm, lengthMm }) =>
      onWall(holeMm, Math.max(0, lengthMm - 1.5 * rodMm), Math.max(0, kangasBondMpa(rodMm, lengthMm))),
  },
  {
    id: 'aicher-epoxy',
    title: 'Aicher 2001, epoxy',
    formula: 'pi d_h l × min(7.55, 60 d_h^-0.49 (l / d_h)^-0.46)',
    basis: 'characteristic',
    source: published(LIPPERT),
    range: 'fracture based, rods of 12 to 30 mm',
    loadN: ({ holeMm, lengthMm }) => onWall(holeMm, lengthMm, aicherEpoxyMpa(holeMm, lengthMm)),
  },
  {
    id: 'aicher-prf',
    title: 'Aicher 2001, phenol-resorcinol',
    formula: 'pi d_h l × min(5.42, 12 d_h^-0.25 (l / d_h)^-0.12)',
    basis: 'characteristic',
    source: published(LIPPERT),
    range: 'fracture based, rods of 12 to 30 mm',
    loadN: ({ holeMm, lengthMm }) => onWall(holeMm, lengthMm, aicherPrfMpa(holeMm, lengthMm)),
  },
  {
    id: 'glulam-handbook',
    title: 'Swedish glulam handbook',
    formula: 'pi d l × 5.5 MPa tanh(w) / w, w = 0.016 l / √d',
    basis: 'characteristic',
    source: fromMemory('Unconfirmed'),
    range: 'rods of 12 to 30 mm',
    loadN: ({ rodMm, holeMm, lengthMm }) => onWall(holeMm, lengthMm, glulamHandbookMpa(rodMm, lengthMm)),
  },
  {
    id: 'moehler',
    title: 'Moehler and Hemmer 1981',
    formula: 'pi d_h l × 1.2 MPa, half across the grain',
    basis: 'allowable',
    source: published(LIPPERT),
    range: 'rods up to 24 mm',
    loadN: ({ holeMm, lengthMm }) => onWall(holeMm, lengthMm, MOEHLER_ALLOWABLE_MPA),
  },
];

function onWall(diameterMm: number, lengthMm: number, stressMpa: number): number {
  return Math.PI * diameterMm * lengthMm * stressMpa;
}
