/** Every rule, in the order in which findings are listed. */
export const RULE_IDS = [
  'strength-demand',
  'first-bending',
  'least-embedment',
  'cover',
  'bit-fit',
  'drill-depth',
  'body-room',
  'holes-meet',
  'through-wire',
  'wire-stated',
  'weakest-link',
  'hooks-foul',
  'shop-consistency',
  'bill-matches',
  'adhesive-suits',
  'calibration-fresh',
] as const;
export type RuleId = (typeof RULE_IDS)[number];
