import type { OperationPlanning } from '@/prisma/data/operation-planning';
import { demoId } from './demo-id';
import { MARLO } from './demo-people';

/** Places of the demo workshop. */
export const DEMO_RESOURCES = [
  { id: demoId('rotator'), name: 'Rotator', kind: 'rotator', capacity: 24, openFromMinute: null, openToMinute: null },
  { id: demoId('rack'), name: 'Drying rack', kind: 'rack', capacity: 60, openFromMinute: null, openToMinute: null },
  // By day only: its fan is heard next door.
  { id: demoId('booth'), name: 'Paint booth', kind: 'booth', capacity: 1, openFromMinute: 480, openToMinute: 1290 },
] as const;

const ROTATOR = demoId('rotator');
const RACK = demoId('rack');
const BOOTH = demoId('booth');

const USUAL: Omit<OperationPlanning, 'operationId'> = {
  setUpMinutes: 0,
  personId: null,
  skill: null,
  leastPieceMinutes: null,
  mostPieces: null,
  resourceId: null,
  resourceShare: 'piece',
  holdsUntil: 'attended',
  remedyMinutes: null,
  spoiltPercent: null,
};

/** What the plan knows of the steps of the demo routes, by their keys. */
const BY_KEY: { readonly [key: string]: Partial<OperationPlanning> } = {
  shape: { skill: 'shaping', leastPieceMinutes: 30 },
  drill: { leastPieceMinutes: 20 },
  glue: { skill: 'glue-up', setUpMinutes: 10, resourceId: RACK, holdsUntil: 'handle', mostPieces: 8 },
  lip: { setUpMinutes: 5, mostPieces: 4 },
  flush: { leastPieceMinutes: 20 },
  seal: { setUpMinutes: 10, resourceId: ROTATOR, holdsUntil: 'handle' },
  paint: { personId: MARLO, leastPieceMinutes: 45, resourceId: BOOTH, resourceShare: 'visit' },
  'top-1': { setUpMinutes: 10, resourceId: ROTATOR, holdsUntil: 'handle' },
  'top-2': { setUpMinutes: 10, resourceId: ROTATOR, holdsUntil: 'handle', remedyMinutes: 3 },
  hooks: { leastPieceMinutes: 15 },
  pack: { leastPieceMinutes: 15 },
};

/** What the plan knows of a step of a demo route. */
export function demoPlanning(operationId: string, key: string): OperationPlanning {
  return { ...USUAL, ...BY_KEY[key], operationId };
}
