import { z } from 'zod';
import { OPERATION_KINDS, WAITS } from '@/lib/batch/plan';
import { CAUTION_TOPICS } from './caution-topic';
import { optionalIdSchema, seenAtSchema } from './model-forms';
import { idSchema, plainText } from './plain-text';

/** Most operations of one route, and most things one of them waits for. */
export const MAX_OPERATIONS = 60;
export const MAX_NEEDS = 8;

const NEED_MINUTES = 'Write minutes for one piece, from 0 to 600; decimals are fine.';

const operationSchema = z.strictObject({
  /** Names the operation within the form: its id, or something the form made for a new one. */
  ref: idSchema,
  name: plainText(1, 80),
  kind: z.enum(OPERATION_KINDS, { error: 'Say whether it is work, a glue-up or a coat.' }),
  minutes: z
    .string()
    .trim()
    .regex(/^\d{1,3}([.,]\d{1,3})?$/, NEED_MINUTES)
    .transform((text) => Number(text.replace(',', '.')))
    .refine((minutes) => minutes <= 600, NEED_MINUTES),
  materialId: optionalIdSchema,
  /** Anchors that a glue-up sets; none ticked: all of them. */
  anchorIds: z.array(idSchema).max(100).default([]),
  caution: z.enum(CAUTION_TOPICS),
  needs: z
    .array(
      z.strictObject({
        after: z.string().min(1, 'Choose the operation it waits for.').pipe(idSchema),
        wait: z.enum(WAITS, { error: 'Choose what it waits for.' }),
      }),
    )
    .max(MAX_NEEDS, `Keep it to ${MAX_NEEDS}.`)
    .default([]),
});

/** The route of a revision. */
export const routeFormSchema = z
  .strictObject({
    seenAt: seenAtSchema,
    operations: z.array(operationSchema).max(MAX_OPERATIONS, `Keep it to ${MAX_OPERATIONS} operations.`).default([]),
  })
  .superRefine(({ operations }, context) => {
    for (const [index, operation] of operations.entries()) {
      const say = (path: (string | number)[], message: string) =>
        context.addIssue({ code: 'custom', path: ['operations', index, ...path], message });
      if (operation.kind === 'glue' && operation.materialId === null) say(['materialId'], 'Choose the adhesive.');
      if (operation.kind === 'coat' && operation.materialId === null) say(['materialId'], 'Choose the coating.');
      const seen = new Set<string>();
      for (const [at, { after, wait }] of operation.needs.entries()) {
        const before = operations.slice(0, index).find((other) => other.ref === after);
        if (before === undefined) say(['needs', at, 'after'], 'It can only wait for an operation above it.');
        else if (before.kind === 'work' && wait !== 'done') {
          say(['needs', at, 'wait'], `"${before.name}" is plain work and cures nothing: choose done.`);
        }
        if (seen.has(after)) say(['needs', at, 'after'], 'It waits for this operation already.');
        seen.add(after);
      }
    }
  });
export type RouteInput = z.infer<typeof routeFormSchema>;
