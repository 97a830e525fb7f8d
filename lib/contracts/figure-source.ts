import { z } from 'zod';
import { FIGURE_SOURCE_KINDS, type FigureSource } from '@/lib/materials/figure-source';
import { plainText } from './plain-text';

/** Where a figure comes from, as it is stored beside it. */
export const figureSourceSchema: z.ZodType<FigureSource> = z.strictObject({
  kind: z.enum(FIGURE_SOURCE_KINDS, { error: 'Say where the figure comes from.' }),
  text: plainText(1, 1_000),
});

/** A source as a form sends it: both its fields, or neither; null then. */
export const optionalSourceText = z
  .strictObject({ kind: z.union([z.literal(''), z.enum(FIGURE_SOURCE_KINDS)]), text: plainText(0, 1_000) })
  .refine(({ kind, text }) => (kind === '') === (text === ''), {
    path: ['text'],
    message: 'Choose the kind of source and write where it stands, or leave both empty.',
  })
  .transform(({ kind, text }): FigureSource | null => (kind === '' ? null : { kind, text }));
