import { z } from 'zod';
import { RULE_IDS } from '@/lib/spec/rule-id';
import { idSchema, plainText } from './plain-text';

/** A short that is accepted: which, why and by whom. The date is when it is sent. */
export const waiverFormSchema = z.strictObject({
  ruleId: z.enum(RULE_IDS, { error: 'Reload the page: there is no such rule any more.' }),
  subject: idSchema,
  reason: plainText(8, 500),
  personId: z.string().min(1, 'Say who accepts it.').pipe(idSchema),
});
export type WaiverInput = z.infer<typeof waiverFormSchema>;
