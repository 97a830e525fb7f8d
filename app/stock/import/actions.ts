'use server';

import { z } from 'zod';
import { importStockList, planStockList } from '@/app/_commands/import-stock-list';
import { now } from '@/app/_server/clock';
import { currentShop } from '@/app/_server/shop';
import { MOST_STOCK_BYTES, readStockFile } from '@/lib/exchange/stock-file';
import { STOCK_REFUSALS } from '@/lib/exchange/stock-row';
import { stockText } from '@/lib/stock/stock-text';
import { db } from '@/prisma/client';
import type { StockImportState } from './_components/import-state';

const UNREADABLE = {
  empty: 'There is nothing in this file.',
  'no-headings':
    'No line of it names both a material and a quantity. Give the columns headings, such as Material, Lot, Quantity.',
  'too-long': 'This file is too long for a list of stock. Take it in in parts of up to 900 kB.',
} as const;

const formSchema = z.object({
  step: z.enum(['look', 'take']),
  dayOrder: z.enum(['', 'day-first', 'month-first']),
  file: z.instanceof(File),
});

/** Reads a list and says what it would bring; with `take`, brings it in. The file comes along both times. */
export async function stockImportAction(data: FormData): Promise<StockImportState> {
  const form = formSchema.safeParse({
    step: data.get('step'),
    dayOrder: data.get('dayOrder') ?? '',
    file: data.get('file'),
  });
  if (!form.success || form.data.file.size === 0) return { status: 'refused', message: 'Choose a file first.' };
  const { step, dayOrder, file } = form.data;
  if (file.size > MOST_STOCK_BYTES) return { status: 'refused', message: UNREADABLE['too-long'] };
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const read = readStockFile(bytes, shop.currency, dayOrder === '' ? null : dayOrder);
  switch (read.state) {
    case 'unreadable':
      return { status: 'refused', message: UNREADABLE[read.code] };
    case 'asks-day-order':
      return { status: 'asks', example: read.example };
    case 'read': {
      if (step === 'take') return { status: 'done', ...(await importStockList(database, read.rows, now())) };
      const plan = await planStockList(database, read.rows);
      const wrongParts = plan.wrongParts.map((line) => ({
        line,
        reason: 'only glues and coats come as resin and hardener',
        text: '',
      }));
      return {
        status: 'preview',
        lots: plan.rows.map(({ line, materialName, code, part, quantity, unit, expiresOn }) => ({
          line,
          materialName,
          code: part === 'whole' ? code : `${code}, ${part}`,
          quantity: stockText(quantity, unit, shop),
          expiresOn,
        })),
        newMaterials: plan.newMaterials,
        knownLines: plan.knownLines,
        refused: [
          ...read.refused.map(({ line, reason, text }) => ({ line, reason: STOCK_REFUSALS[reason], text })),
          ...wrongParts,
        ],
        blankLines: read.blankLines,
      };
    }
  }
}
