import { type FigureSource, published } from '@/lib/materials/figure-source';
import type { WoodGroup } from '@/lib/materials/wood-regression';
import type { WoodFigureName, WoodSheet } from '@/lib/materials/wood-sheet';
import { poundsForce, psi } from '@/lib/units/force-and-length';

/** A wood of the reference table. */
export interface TabulatedWood {
  readonly id: string;
  readonly name: string;
  readonly sheet: WoodSheet;
}

const US_WOODS: FigureSource = published(
  'Wood Handbook, FPL-GTR-282 (2021), Table 5-3b, mean of small clear specimens (read as a transcription)',
);
const IMPORTED_WOODS: FigureSource = published(
  'Wood Handbook, FPL-GTR-282 (2021), Table 5-5b, mean of small clear specimens (read as a transcription)',
);
const PAULOWNIA: FigureSource = published('A web note on paulownia; a weak source, and it gives no shear strength');

/** psi at 12 % moisture and, where printed, green; null: not printed. Hardness in lbf. */
interface Row {
  readonly gravity: number;
  readonly parallel: number;
  readonly perp: number | null;
  readonly shear: number | null;
  readonly tension: number | null;
  readonly hardness: number | null;
  readonly greenShear?: number;
  readonly greenTension?: number;
  readonly intersection?: number;
}

type Cells = readonly [
  gravity: number,
  parallel: number,
  perp: number | null,
  shear: number | null,
  tension: number | null,
  hardness: number | null,
];

function row(cells: Cells, more: Partial<Row> = {}): Row {
  const [gravity, parallel, perp, shear, tension, hardness] = cells;
  return { gravity, parallel, perp, shear, tension, hardness, ...more };
}

function sheet(group: WoodGroup, source: FigureSource, figures: Row, more: Partial<WoodSheet> = {}): WoodSheet {
  const sources: { [F in WoodFigureName]?: FigureSource } = { specificGravity: source, compressionParallelMpa: source };
  const stress = (name: WoodFigureName, value: number | null | undefined) => {
    if (value === null || value === undefined) return {};
    sources[name] = source;
    return { [name]: name === 'hardnessN' ? poundsForce(value) : psi(value) };
  };
  return {
    group,
    specificGravity: figures.gravity,
    gravityBasis: 'at-12',
    figuresMoisturePercent: 12,
    compressionParallelMpa: psi(figures.parallel),
    ...stress('compressionPerpMpa', figures.perp),
    ...stress('shearMpa', figures.shear),
    ...stress('tensionPerpMpa', figures.tension),
    ...stress('hardnessN', figures.hardness),
    ...stress('greenShearMpa', figures.greenShear),
    ...stress('greenTensionPerpMpa', figures.greenTension),
    ...(figures.intersection === undefined ? {} : { intersectionPercent: figures.intersection }),
    ...more,
    sources,
  };
}

function wood(id: string, name: string, made: WoodSheet): TabulatedWood {
  return { id, name, sheet: made };
}

const hard = (id: string, name: string, cells: Cells, more?: Partial<Row>) =>
  wood(id, name, sheet('hardwood', US_WOODS, row(cells, more)));
const soft = (id: string, name: string, cells: Cells, more?: Partial<Row>) =>
  wood(id, name, sheet('softwood', US_WOODS, row(cells, more)));
const imported = (id: string, name: string, cells: Cells, more: Partial<WoodSheet> = {}, rowMore?: Partial<Row>) =>
  wood(id, name, sheet('hardwood', IMPORTED_WOODS, row(cells, rowMore), { gravityBasis: 'green', ...more }));

/**
 * Woods with published figures: specific gravity, compression parallel, compression perpendicular, shear, tension
 * perpendicular, side hardness, at 12 % moisture unless said otherwise. Means of small clear specimens, never design
 * values. The imported woods give specific gravity on the green volume.
 */
export const WOOD_TABLE: readonly TabulatedWood[] = [
  hard('yellow-poplar', 'Yellow-poplar', [0.42, 5540, 500, 1190, 540, 540], { greenShear: 790, greenTension: 510 }),
  hard('basswood', 'Basswood, American', [0.37, 4730, 370, 990, 350, 410], { greenShear: 600, greenTension: 280 }),
  hard('red-alder', 'Alder, red', [0.41, 5820, 440, 1080, 420, 590], { greenShear: 770, greenTension: 390 }),
  hard('white-ash', 'Ash, white', [0.6, 7410, 1160, 1910, 940, 1320], {
    greenShear: 1350,
    greenTension: 590,
    intersection: 24,
  }),
  hard('quaking-aspen', 'Aspen, quaking', [0.38, 4250, 370, 850, 260, 350], { greenShear: 660, greenTension: 230 }),
  hard('bigtooth-aspen', 'Aspen, bigtooth', [0.39, 5300, 450, 1080, null, null]),
  hard('beech', 'Beech, American', [0.64, 7300, 1010, 2010, 1010, 1300], { greenShear: 1290, greenTension: 720 }),
  hard('yellow-birch', 'Birch, yellow', [0.62, 8170, 970, 1880, 920, 1260], { intersection: 27 }),
  hard('paper-birch', 'Birch, paper', [0.55, 5690, 600, 1210, null, 910]),
  hard('butternut', 'Butternut', [0.38, 5110, 460, 1170, 440, 490]),
  hard('eastern-cottonwood', 'Cottonwood, eastern', [0.4, 4910, 380, 930, 580, 430], {
    greenShear: 680,
    greenTension: 410,
  }),
  hard('black-cottonwood', 'Cottonwood, black', [0.35, 4500, 300, 1040, 330, 350]),
  hard('sugar-maple', 'Maple, sugar', [0.63, 7830, 1470, 2330, null, 1450], { greenShear: 1460 }),
  hard('red-maple', 'Maple, red', [0.54, 6540, 1000, 1850, null, 950], { greenShear: 1150 }),
  hard('black-willow', 'Willow, black', [0.39, 4100, 430, 1250, null, null]),
  soft('baldcypress', 'Baldcypress', [0.46, 6360, 730, 1000, 270, 510], { greenShear: 810, greenTension: 300 }),
  soft('western-redcedar', 'Cedar, western redcedar', [0.32, 4560, 460, 990, 220, 350], {
    greenShear: 770,
    greenTension: 230,
  }),
  soft('northern-white-cedar', 'Cedar, northern white', [0.31, 3960, 310, 850, 240, 320], {
    greenShear: 620,
    greenTension: 240,
  }),
  soft('atlantic-white-cedar', 'Cedar, Atlantic white', [0.32, 4700, 410, 800, 220, 350], {
    greenShear: 690,
    greenTension: 180,
  }),
  soft('port-orford-cedar', 'Cedar, Port-Orford', [0.43, 6250, 720, 1370, 400, 630]),
  soft('yellow-cedar', 'Cedar, yellow (Alaska)', [0.44, 6310, 620, 1130, 360, 580]),
  soft('eastern-white-pine', 'Pine, eastern white', [0.35, 4800, 440, 900, 310, 380], {
    greenShear: 680,
    greenTension: 250,
  }),
  soft('sugar-pine', 'Pine, sugar', [0.36, 4460, 500, 1130, 350, 380], { greenShear: 720, greenTension: 270 }),
  imported('balsa', 'Balsa', [0.16, 2160, null, 300, null, null], { needsWeighing: true }),
  imported('true-mahogany', 'Mahogany, true', [0.45, 6780, null, 1230, null, 800]),
  imported('african-mahogany', 'Mahogany, African', [0.42, 6460, null, 1500, null, 830]),
  imported('spanish-cedar', 'Spanish-cedar', [0.41, 6210, null, 1100, null, 600]),
  imported(
    'jelutong',
    'Jelutong',
    [0.36, 3920, null, 840, null, 390],
    { figuresMoisturePercent: 15 },
    { greenShear: 760 },
  ),
  imported('obeche', 'Obeche', [0.3, 3930, null, 990, null, 430]),
  wood('paulownia', 'Paulownia', sheet('hardwood', PAULOWNIA, row([0.28, 3010, null, null, null, 300]))),
];
