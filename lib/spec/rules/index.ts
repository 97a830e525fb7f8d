import type { Rule } from '@/lib/spec/rule';
import { adhesiveSuitsRule } from '@/lib/spec/rules/adhesive-suits';
import { billMatchesRule } from '@/lib/spec/rules/bill-matches';
import { bitFitRule } from '@/lib/spec/rules/bit-fit';
import { bodyRoomRule } from '@/lib/spec/rules/body-room';
import { calibrationFreshRule } from '@/lib/spec/rules/calibration-fresh';
import { coverRule } from '@/lib/spec/rules/cover';
import { drillDepthRule } from '@/lib/spec/rules/drill-depth';
import { firstBendingRule } from '@/lib/spec/rules/first-bending';
import { holesMeetRule } from '@/lib/spec/rules/holes-meet';
import { hooksFoulRule } from '@/lib/spec/rules/hooks-foul';
import { leastEmbedmentRule } from '@/lib/spec/rules/least-embedment';
import { shopConsistencyRule } from '@/lib/spec/rules/shop-consistency';
import { strengthDemandRule } from '@/lib/spec/rules/strength-demand';
import { throughWireRule } from '@/lib/spec/rules/through-wire';
import { weakestLinkRule } from '@/lib/spec/rules/weakest-link';
import { wireStatedRule } from '@/lib/spec/rules/wire-stated';

/** Every rule, in the order in which findings are listed. */
export const RULES: readonly Rule[] = [
  strengthDemandRule,
  firstBendingRule,
  leastEmbedmentRule,
  coverRule,
  bitFitRule,
  drillDepthRule,
  bodyRoomRule,
  holesMeetRule,
  throughWireRule,
  wireStatedRule,
  weakestLinkRule,
  hooksFoulRule,
  shopConsistencyRule,
  billMatchesRule,
  adhesiveSuitsRule,
  calibrationFreshRule,
];
