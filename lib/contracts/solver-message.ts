import { z } from 'zod';

const numbers = z.array(z.int());

/** What our models print for each solution. */
export const constraintAnswerSchema = z.object({
  starts: numbers,
  sessions: numbers,
  pays: numbers,
  kept: numbers,
  late: numbers,
});

/** What the thread of the solver tells, as far as it is used; other kinds are passed over. */
export const solverMessageSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('ready') }),
  z.object({ type: z.literal('solution'), output: z.object({ default: z.string() }) }),
  z.object({ type: z.literal('status'), status: z.string() }),
  z.object({ type: z.literal('error'), message: z.string() }),
  z.object({ type: z.literal('exit'), code: z.int().nullable() }),
]);
