import { z } from 'zod';
import { MILESTONES } from '@/lib/cure/adhesive-sheet';
import { optionalIdSchema } from './model-forms';
import { numberText, optionalNumberText } from './number-text';
import { idSchema, plainText } from './plain-text';
import { optionalDaySchema } from './wall-time';

/** How an operation counts the places it takes. */
export const RESOURCE_SHARES = ['piece', 'visit'] as const;
export type ResourceShare = (typeof RESOURCE_SHARES)[number];

/** Until when an operation takes its places: while it is attended, or until a milestone of its cure. */
export const HOLD_ENDS = ['attended', ...MILESTONES.filter((milestone) => milestone !== 'recoat-by')] as const;
export type HoldEnd = (typeof HOLD_ENDS)[number];

const skillSchema = plainText(1, 40);

const operationPlanningSchema = z.strictObject({
  operationId: idSchema,
  setUpMinutes: numberText(0, 240),
  /** `anyone`, `skill:...` or `person:...`, one list for the eye. */
  by: z
    .string()
    .max(80)
    .transform((text, context) => {
      const [kind, rest = ''] = [text.split(':', 1)[0], text.slice(text.indexOf(':') + 1)];
      if (text === 'anyone') return { personId: null, skill: null };
      if (kind === 'skill' && skillSchema.safeParse(rest).success) return { personId: null, skill: rest };
      if (kind === 'person' && idSchema.safeParse(rest).success) return { personId: rest, skill: null };
      context.addIssue({ code: 'custom', message: 'Choose who may do it.' });
      return z.NEVER;
    }),
  leastPieceMinutes: optionalNumberText(1, 600),
  mostPieces: optionalNumberText(1, 999).transform((count) => (count === null ? null : Math.floor(count))),
  resourceId: optionalIdSchema,
  resourceShare: z.enum(RESOURCE_SHARES, { error: 'Choose what takes a place.' }),
  holdsUntil: z.enum(HOLD_ENDS, { error: 'Choose until when.' }),
  remedyMinutes: optionalNumberText(0, 240),
  spoiltPercent: optionalNumberText(0, 90),
});

/** What the plan knows of the operations of a route. */
export const routePlanningFormSchema = z.strictObject({
  operations: z.array(operationPlanningSchema).max(60).default([]),
});
export type RoutePlanningInput = z.infer<typeof routePlanningFormSchema>;

/** When a batch may begin, when it is due, and what a day late costs beside the others. */
export const batchPlanningFormSchema = z
  .strictObject({
    releaseOn: optionalDaySchema,
    dueOn: optionalDaySchema,
    weight: numberText(0, 100),
  })
  .superRefine(({ releaseOn, dueOn }, context) => {
    if (releaseOn !== null && dueOn !== null && dueOn < releaseOn) {
      context.addIssue({ code: 'custom', path: ['dueOn'], message: 'It is due before it may begin.' });
    }
  });
export type BatchPlanningInput = z.infer<typeof batchPlanningFormSchema>;

/** Most skills of one person. */
const MOST_SKILLS = 20;

/** What a person can do, as words between commas. */
export const skillsFormSchema = z.strictObject({
  skills: plainText(0, 400)
    .transform((text) => [...new Set(text.split(',').map((skill) => skill.trim().toLowerCase()))].filter(Boolean))
    .pipe(z.array(skillSchema).max(MOST_SKILLS, `Keep it to ${MOST_SKILLS}.`)),
});
