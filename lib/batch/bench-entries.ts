import type { MixPotLife } from '@/lib/batch/batch-state';
import type { ReleaseBand } from '@/lib/batch/cure-reader';
import type { RecordedAs } from '@/lib/batch/decision';
import type { BatchEvaluation, KnownBatch, OperationStatus } from '@/lib/batch/evaluation';
import type { Milestone } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';

/** One open batch as the Bench takes it in. */
export interface BenchBatch extends KnownBatch {
  readonly batchId: string;
  readonly number: number;
  /** YYYY-MM-DD, null without a due date. */
  readonly dueOn: string | null;
  readonly evaluation: BatchEvaluation;
}

/** Why an action stands where it does in the list. */
export type Urgency =
  | { readonly kind: 'window-closing'; readonly closesAt: Instant }
  | { readonly kind: 'due'; readonly dueOn: string }
  | { readonly kind: 'waiting'; readonly sinceAt: Instant };

/** An operation that can be done now on these pieces. */
export interface BenchAction {
  readonly batchId: string;
  readonly operationId: string;
  readonly recordedAs: RecordedAs;
  readonly pieces: readonly number[];
  readonly urgency: Urgency;
  /** Mixes of this operation that are running: joints or coats can be added to them. */
  readonly runningMixIds: readonly string[];
}

/** A mix that is not closed. */
export interface RunningMix {
  readonly batchId: string;
  readonly mixId: string;
  readonly mixNumber: number;
  readonly operationId: string;
  readonly materialName: string;
  readonly mixedAt: Instant;
  readonly potLife: MixPotLife;
  /** Past the lower end of its pot life at `nowAt`. */
  readonly past: boolean;
  readonly jointCount: number;
  readonly coatCount: number;
}

/** A milestone that joints or coats of one mix reach next. Set over several minutes: the band of the last of them. */
export interface BenchRelease {
  readonly batchId: string;
  readonly mixId: string;
  readonly mixNumber: number;
  readonly operationId: string;
  readonly milestone: Milestone;
  readonly band: ReleaseBand;
  readonly pieces: readonly number[];
}

/** Pieces that may not go on yet, and why. */
export interface HeldPieces {
  readonly batchId: string;
  readonly operationId: string;
  readonly pieces: readonly number[];
  readonly status: Exclude<OperationStatus, { kind: 'ready' | 'blocked' }>;
}

/** The first entries of a list and how many more there are. */
export interface Shortened<T> {
  readonly shown: readonly T[];
  readonly more: number;
}

export interface BenchView {
  readonly nowAt: Instant;
  /** Most urgent first: windows that close, then due dates, then the longest waiting. */
  readonly actions: Shortened<BenchAction>;
  /** The pot life that ends first comes first; mixes without a known pot life last. */
  readonly runningMixes: Shortened<RunningMix>;
  /** Soonest allowed first, over all batches. */
  readonly releases: Shortened<BenchRelease>;
  /** Closed windows first, then what cannot be judged, then waits by the hour they end. */
  readonly held: Shortened<HeldPieces>;
  /** Batches with every live piece done, to be finished. */
  readonly toFinish: Shortened<string>;
}

/** How many entries each list shows at most. */
export interface BenchLimits {
  readonly actions: number;
  readonly runningMixes: number;
  readonly releases: number;
  readonly held: number;
  readonly toFinish: number;
}
