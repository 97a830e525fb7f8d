import type { AnchorMechanics } from '@/lib/spec/anchor-mechanics';
import type { SpecAnchor } from '@/lib/spec/spec-model';

/** Everything the rules ask about one anchor: as usable, and what is computed of it. */
export interface AnchorFacts {
  readonly anchor: SpecAnchor;
  readonly of: AnchorMechanics;
}
