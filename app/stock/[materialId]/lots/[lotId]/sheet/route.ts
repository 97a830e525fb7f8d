import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { LONGEST_SHEET_BYTES, saveLotSheet, sheetFolder } from '@/app/_commands/save-lot-sheet';
import { isFromOwnPage } from '@/app/_server/caller';
import { optionalDaySchema } from '@/lib/contracts/wall-time';
import { db } from '@/prisma/client';
import { findLot } from '@/prisma/data/lots';

interface Context {
  readonly params: Promise<{ materialId: string; lotId: string }>;
}

const dataDir = () => process.env.DATA_DIR ?? './data';
const TYPES: Readonly<Record<string, string>> = { pdf: 'application/pdf', png: 'image/png', jpg: 'image/jpeg' };
/** What a form adds around its file. */
const FORM_BYTES = 10_000;

/** The data sheet that came with a lot. */
export async function GET(_: Request, { params }: Context): Promise<Response> {
  const { materialId, lotId } = await params;
  const lot = await findLot(await db(), lotId);
  if (lot === null || lot.materialId !== materialId || lot.sheetFile === null) {
    return new Response('No data sheet is kept of this lot.', { status: 404 });
  }
  const file = path.join(sheetFolder(dataDir()), path.basename(lot.sheetFile));
  const bytes = await readFile(file).catch(() => null);
  if (bytes === null) {
    const message = `The file ${lot.sheetFile} is not in the folder data-sheets of the data folder. Put it back from a copy.`;
    return new Response(message, { status: 404 });
  }
  const name = encodeURIComponent(lot.sheetName ?? lot.sheetFile);
  return new Response(new Uint8Array(bytes), {
    headers: {
      'content-type': TYPES[path.extname(file).slice(1)] ?? 'application/octet-stream',
      'content-length': String(bytes.length),
      'content-disposition': `attachment; filename*=UTF-8''${name}`,
      'cache-control': 'private, no-store',
      'x-content-type-options': 'nosniff',
    },
  });
}

/** Takes in a data sheet from the form on the lot's page, and goes back there. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { materialId, lotId } = await params;
  if (!isFromOwnPage(request.headers)) return new Response('Only a page of this app may send a file.', { status: 403 });
  const back = (fault: string) =>
    new Response(null, {
      status: 303,
      headers: { location: `/stock/${materialId}/lots/${lotId}${fault === '' ? '' : `?sheet=${fault}`}` },
    });
  const length = Number(request.headers.get('content-length') ?? Number.POSITIVE_INFINITY);
  if (!(length <= LONGEST_SHEET_BYTES + FORM_BYTES)) return back('too-long');
  const form = await request.formData();
  const file = form.get('file');
  const issuedOn = optionalDaySchema.safeParse(form.get('issuedOn') ?? '');
  if (!(file instanceof File) || file.size === 0) return back('empty');
  if (!issuedOn.success) return back('bad-day');
  const bytes = new Uint8Array(await file.arrayBuffer());
  const saved = await saveLotSheet(await db(), dataDir(), lotId, { name: file.name, bytes, issuedOn: issuedOn.data });
  return back(saved.ok ? '' : saved.code);
}
