import type { Rule } from '@/lib/spec/rule';
import { leastEmbedmentRule } from '@/lib/spec/rules/least-embedment';

/** Every rule, in the order in which findings are listed. */
export const RULES: readonly Rule[] = [leastEmbedmentRule];
