'use client';

import { useMemo } from 'react';
import type { Timetable } from '@/lib/contracts/stored-plan';
import { PlanSheet, type PlanSheetProps } from './plan-sheet';

export interface HeldSheetProps extends Pick<PlanSheetProps, 'setting' | 'conflicts' | 'compared' | 'children'> {
  /** The `Timetable` as JSON. */
  readonly timetableJson: string;
}

/** The plan that holds. */
export function HeldSheet({ timetableJson, ...rest }: HeldSheetProps) {
  const timetable = useMemo((): Timetable => JSON.parse(timetableJson), [timetableJson]);
  return <PlanSheet timetable={timetable} isTried={false} {...rest} />;
}
