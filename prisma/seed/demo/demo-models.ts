import type { BallastItem } from '@/lib/geometry/ballast';
import {
  BELLY,
  HOOK_2,
  HOOK_4,
  RING,
  SCREW_EYE,
  SOFT_WIRE,
  SPRING_WIRE,
  screwEye,
  TAIL,
  TIE,
  throughWire,
  twisted,
} from './demo-anchors';
import { demoId } from './demo-id';
import { EPOXY_30, EPOXY_60, TOPCOAT } from './demo-materials';
import type { DemoModel, DemoRevision } from './demo-model';
import { lipRoute, plainRoute, throughWireRoute } from './demo-routes';

function shot(name: string, metal: BallastItem['metal'], massG: number, xMm: number, zMm: number): BallastItem {
  return { name, metal, massG, xMm, zMm, isInside: true };
}

export const lipless: DemoRevision = {
  id: demoId('sawhorse-a'),
  letter: 'A',
  frozenDaysAgo: 120,
  woodMaterialId: 'start-basswood',
  lengthMm: 75,
  profile: [
    [0, 2, 2],
    [5, 7, 4.5],
    [12, 11.5, 6],
    [20, 14, 7],
    [28, 14.5, 7.2],
    [38, 13, 7],
    [48, 10.5, 6.2],
    [58, 7.5, 5],
    [67, 5.5, 4.8],
    [75, 4.2, 4.2],
  ],
  lineLabelN: 54,
  lineType: 'mono',
  ballast: [shot('two balls under the back', 'tungsten', 4, 38, -6)],
  note: 'Line tie on the back at a third of the length.',
  anchors: [
    twisted(TIE, { face: 'back', xMm: 22, shankAngleDeg: 70, leansTo: 'nose', loadAngleDeg: 40 }, null),
    twisted(BELLY, { face: 'belly', xMm: 34, shankAngleDeg: 90, loadAngleDeg: 30 }, HOOK_4),
    twisted(TAIL, { face: 'tail', xMm: 75, shankAngleDeg: 0, loadAngleDeg: 0 }, HOOK_4),
  ],
  route: plainRoute,
  bill: [
    ['start-basswood', 90, 'mm', ''],
    [SOFT_WIRE, 260, 'mm', 'three twists'],
    [EPOXY_30, 0.6, 'g', ''],
    [TOPCOAT, 2.4, 'g', 'three coats'],
    [HOOK_4, 2, 'pieces', ''],
    [RING, 2, 'pieces', ''],
    ['start-tungsten-ball-6-mm', 2, 'pieces', 'ballast and rattle'],
    ['start-lure-eye-6-mm', 2, 'pieces', ''],
  ],
};

export const popper: DemoRevision = {
  id: demoId('kettle-a'),
  letter: 'A',
  frozenDaysAgo: 95,
  woodMaterialId: 'start-white-pine',
  lengthMm: 70,
  profile: [
    [0, 10, 10],
    [8, 11, 11],
    [16, 10.6, 10.6],
    [26, 9.2, 9.2],
    [36, 8, 8],
    [46, 6.6, 6.6],
    [56, 5, 5],
    [64, 3.6, 3.6],
    [70, 2.4, 2.4],
  ],
  lineLabelN: 45,
  lineType: 'mono',
  ballast: [],
  note: 'Screw eyes, set in epoxy.',
  anchors: [
    screwEye(TIE, { face: 'nose', xMm: 0, shankAngleDeg: 0, loadAngleDeg: 0 }, null),
    screwEye(BELLY, { face: 'belly', xMm: 28, shankAngleDeg: 90, loadAngleDeg: 30 }, HOOK_4),
    screwEye(TAIL, { face: 'tail', xMm: 70, shankAngleDeg: 0, loadAngleDeg: 0 }, HOOK_4),
  ],
  route: plainRoute,
  bill: [
    ['start-white-pine', 85, 'mm', ''],
    [SCREW_EYE, 3, 'pieces', ''],
    [EPOXY_30, 0.4, 'g', ''],
    [TOPCOAT, 2.2, 'g', 'three coats'],
    [HOOK_4, 2, 'pieces', ''],
    [RING, 2, 'pieces', ''],
    ['start-lure-eye-6-mm', 2, 'pieces', ''],
  ],
};

export const minnow: DemoRevision = {
  id: demoId('plumbline-a'),
  letter: 'A',
  frozenDaysAgo: 70,
  woodMaterialId: 'start-basswood',
  lengthMm: 110,
  profile: [
    [0, 1.5, 1.5],
    [6, 5, 4.5],
    [16, 8, 7],
    [30, 10, 8.4],
    [46, 10.2, 8.6],
    [62, 9, 7.8],
    [78, 7, 6.2],
    [92, 5, 4.4],
    [103, 4.6, 4.4],
    [110, 4, 4],
  ],
  lineLabelN: 62,
  lineType: 'braid',
  ballast: [],
  note: 'Lip slot at 25 degrees.',
  anchors: [
    twisted(TIE, { face: 'nose', xMm: 0, shankAngleDeg: 0, loadAngleDeg: 0 }, null),
    {
      ...twisted(BELLY, { face: 'belly', xMm: 42, shankAngleDeg: 90, loadAngleDeg: 60 }, HOOK_4),
      drillDepthMm: 10,
      embedmentMm: 9,
    },
    twisted(TAIL, { face: 'tail', xMm: 110, shankAngleDeg: 0, loadAngleDeg: 0 }, HOOK_4),
  ],
  route: lipRoute,
  bill: [
    ['start-basswood', 125, 'mm', ''],
    [SOFT_WIRE, 260, 'mm', 'three twists'],
    [EPOXY_30, 0.6, 'g', ''],
    ['start-polycarbonate-sheet-1-5-mm', 1, 'pieces', 'lip blank'],
    [TOPCOAT, 3, 'g', 'three coats'],
    [HOOK_4, 2, 'pieces', ''],
    [RING, 2, 'pieces', ''],
    ['start-lure-eye-6-mm', 2, 'pieces', ''],
  ],
};

const jerkbaitProfile: DemoRevision['profile'] = [
  [0, 5, 4],
  [8, 11, 8],
  [22, 15.5, 11],
  [42, 17.5, 12.5],
  [66, 17.5, 12.5],
  [90, 16, 11.5],
  [112, 13, 9.5],
  [130, 9.5, 7],
  [143, 6.5, 5],
  [150, 4.5, 3.5],
];

function jerkbait(letter: string, frozenDaysAgo: number, note: string, bellyXMm: number): DemoRevision {
  return {
    id: demoId(`mallet-${letter.toLowerCase()}`),
    letter,
    frozenDaysAgo,
    woodMaterialId: 'start-hard-maple',
    lengthMm: 150,
    profile: jerkbaitProfile,
    lineLabelN: 220,
    lineType: 'braid',
    ballast: [shot('tin wire', 'tin', 9, 78, -9)],
    note,
    anchors: [
      throughWire(TIE, { face: 'nose', xMm: 0, shankAngleDeg: 0, loadAngleDeg: 0 }, null),
      throughWire(BELLY, { face: 'belly', xMm: bellyXMm, shankAngleDeg: 90, loadAngleDeg: 30 }, HOOK_2),
      throughWire(TAIL, { face: 'tail', xMm: 150, shankAngleDeg: 0, loadAngleDeg: 0 }, HOOK_2),
    ],
    route: throughWireRoute,
    bill: [
      ['start-hard-maple', 165, 'mm', ''],
      [SPRING_WIRE, 310, 'mm', 'one length through the body'],
      [EPOXY_60, 3.5, 'g', ''],
      [TOPCOAT, 6, 'g', 'three coats'],
      [HOOK_2, 2, 'pieces', ''],
      [RING, 2, 'pieces', ''],
      ['start-tin-wire-3-mm', 45, 'mm', 'ballast'],
      ['start-lure-eye-8-mm', 2, 'pieces', ''],
    ],
  };
}

const jerkbaitA = jerkbait('A', 180, 'First version; nosed down at rest.', 62);
export const jerkbaitB = jerkbait('B', 40, 'Belly hanger moved back 6 mm: lies level.', 68);

/** Four invented models, all of their revisions frozen. */
export const DEMO_MODELS: readonly DemoModel[] = [
  {
    id: demoId('model-sawhorse'),
    name: 'Sawhorse lipless',
    note: 'Flat-sided sinker for early spring.',
    revisions: [lipless],
  },
  {
    id: demoId('model-kettle'),
    name: 'Kettle popper',
    note: 'Cupped face, sits tail down.',
    revisions: [popper],
  },
  {
    id: demoId('model-plumbline'),
    name: 'Plumbline minnow',
    note: 'Slim diver with a square lip.',
    revisions: [minnow],
  },
  {
    id: demoId('model-mallet'),
    name: 'Mallet jerkbait',
    note: 'Big glider on a through-wire.',
    revisions: [jerkbaitA, jerkbaitB],
  },
];
