'use client';

import { createContext, type ReactNode, use } from 'react';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';
import type { MassUnit, TemperatureUnit } from '@/lib/units/unit-choice';

/** An adhesive or coating that can be mixed. */
export interface MixMaterial {
  readonly id: string;
  readonly name: string;
  readonly sheet: AdhesiveSheet;
  readonly lots: readonly { readonly id: string; readonly label: string }[];
  /** Mass of the newest mix of it, g; null when it was never mixed. */
  readonly lastMassG: number | null;
  readonly lastLotIds: readonly string[];
}

/** What is known of the room at the moment. */
export interface RoomNow {
  readonly temperatureC: number;
  readonly humidityPct: number | null;
  /** Where the figure comes from: "read at 19:32", "the usual for this hour". */
  readonly source: string;
}

/** What every part of the Bench needs to know. */
export interface BenchWorld {
  /** When the page was made, by the server's clock. */
  readonly renderedAt: Instant;
  readonly zone: string;
  readonly massUnit: MassUnit;
  readonly temperatureUnit: TemperatureUnit;
  readonly room: RoomNow;
  readonly materials: readonly MixMaterial[];
}

const BenchContext = createContext<BenchWorld | null>(null);

export function BenchProvider({ world, children }: { readonly world: BenchWorld; readonly children: ReactNode }) {
  return <BenchContext value={world}>{children}</BenchContext>;
}

export function useBenchWorld(): BenchWorld {
  const world = use(BenchContext);
  if (world === null) throw new Error('a part of the Bench was drawn outside of BenchProvider');
  return world;
}

/** The batch an action belongs to, and the newest event its screen showed. */
export interface BatchRef {
  readonly batchId: string;
  readonly number: number;
  readonly seenSeq: number;
}
