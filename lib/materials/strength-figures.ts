import type { AdhesiveStrengthSheet } from '@/lib/materials/adhesive-strength-sheet';
import type { FittingSheet, ScrewEyeSheet } from '@/lib/materials/fitting-sheet';
import type { WireSheet } from '@/lib/materials/wire-sheet';
import type { WoodSheet } from '@/lib/materials/wood-sheet';

/** What is known of a material's strength, by the kind it is. */
export type StrengthFigures =
  | { readonly kind: 'wood'; readonly sheet: WoodSheet }
  | { readonly kind: 'wire'; readonly sheet: WireSheet }
  | { readonly kind: 'adhesive'; readonly sheet: AdhesiveStrengthSheet }
  | { readonly kind: 'hook' | 'split-ring'; readonly sheet: FittingSheet }
  | { readonly kind: 'screw-eye'; readonly sheet: ScrewEyeSheet };

/** Kinds of material that have figures of strength. */
export const STRENGTH_KINDS = ['wood', 'wire', 'adhesive', 'hook', 'split-ring', 'screw-eye'] as const;
export type StrengthKind = (typeof STRENGTH_KINDS)[number];
