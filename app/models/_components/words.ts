import type { OperationKind, Wait } from '@/lib/batch/plan';
import type { AnchorKind, AnchorRole } from '@/lib/geometry/anchor';
import type { BallastMetal } from '@/lib/geometry/ballast';
import type { BodyKind } from '@/lib/geometry/body-shapes';
import type { AnchorFace } from '@/lib/geometry/shank-path';
import type { LineType } from '@/lib/strength/fishing-line';

/** What stands on the screens for the words of the schema. */
export const ROLE_WORDS: { readonly [R in AnchorRole]: string } = {
  'line-tie': 'line tie',
  'belly-hanger': 'belly hanger',
  'tail-hanger': 'tail hanger',
};

export const ANCHOR_KIND_WORDS: { readonly [K in AnchorKind]: string } = {
  'twisted-wire': 'twisted wire',
  'screw-eye': 'screw eye',
  'through-wire': 'through-wire',
};

export const FACE_WORDS: { readonly [F in AnchorFace]: string } = {
  nose: 'nose',
  tail: 'tail',
  belly: 'belly',
  back: 'back',
};

export const LINE_TYPE_WORDS: { readonly [L in LineType]: string } = {
  class: 'class line',
  mono: 'monofilament',
  fluorocarbon: 'fluorocarbon',
  braid: 'braid',
};

export const METAL_WORDS: { readonly [M in BallastMetal]: string } = {
  lead: 'lead',
  tungsten: 'tungsten',
  tin: 'tin',
  steel: 'steel',
  brass: 'brass',
};

export const BODY_KIND_WORDS: { readonly [K in BodyKind]: string } = {
  lipless: 'lipless',
  popper: 'popper',
  minnow: 'minnow',
  jerkbait: 'jerkbait',
  plug: 'plug',
};

export const OPERATION_WORDS: { readonly [K in OperationKind]: string } = {
  work: 'work',
  glue: 'glue-up',
  coat: 'coat',
};

/** "after Set anchors is ...": what an operation waits for. */
export const WAIT_WORDS: { readonly [W in Wait]: string } = {
  done: 'done',
  handle: 'hard enough to handle',
  sand: 'hard enough to sand',
  recoat: 'within its recoat window',
  paint: 'hard enough to paint',
  'pull-test': 'hard enough to pull-test',
  ship: 'hard enough to ship',
};
