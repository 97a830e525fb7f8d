import type { WeeklyHours } from '@/lib/units/weekly-hours';
import { demoId } from './demo-id';

export interface DemoPerson {
  readonly id: string;
  readonly name: string;
  readonly skills: readonly string[];
  readonly benchHours: readonly WeeklyHours[];
}

const EVENING = { fromMinute: 18 * 60 + 30, toMinute: 21 * 60 + 30 };

export const IDA = demoId('ida');
export const WES = demoId('wes');
export const MARLO = demoId('marlo');

/** Three invented people with the hours they can be at the bench. */
export const DEMO_PEOPLE: readonly DemoPerson[] = [
  {
    id: IDA,
    name: 'Ida',
    skills: ['shaping', 'glue-up', 'topcoat'],
    benchHours: [
      { weekday: 1, ...EVENING },
      { weekday: 2, ...EVENING },
      { weekday: 3, ...EVENING },
      { weekday: 4, ...EVENING },
      { weekday: 6, fromMinute: 9 * 60, toMinute: 13 * 60 },
    ],
  },
  {
    id: WES,
    name: 'Wes',
    skills: ['shaping', 'wire', 'glue-up'],
    benchHours: [
      { weekday: 2, ...EVENING },
      { weekday: 4, ...EVENING },
      { weekday: 6, fromMinute: 8 * 60, toMinute: 15 * 60 },
    ],
  },
  {
    id: MARLO,
    name: 'Marlo',
    skills: ['painting'],
    benchHours: [
      { weekday: 3, fromMinute: 19 * 60, toMinute: 21 * 60 },
      { weekday: 6, fromMinute: 9 * 60, toMinute: 15 * 60 },
    ],
  },
];
