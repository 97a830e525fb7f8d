import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { keepPullPhoto } from '@/app/_commands/keep-pull-photo';
import { isFromOwnPage } from '@/app/_server/caller';
import { now } from '@/app/_server/clock';
import { chosenPersonId } from '@/app/_server/device';
import { photoFolder } from '@/app/_server/photo-folder';
import { MOST_PHOTO_BYTES, PHOTO_TYPES } from '@/lib/contracts/photo-type';
import { idSchema } from '@/lib/contracts/plain-text';
import { db } from '@/prisma/client';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The photo of a pull, as an image and nothing else. 404 where there is none. */
export async function GET(_: Request, { params }: Context): Promise<Response> {
  const id = idSchema.safeParse((await params).id);
  const select = { photoName: true, photoType: true };
  const pull = id.success ? await (await db()).pull.findUnique({ where: { id: id.data }, select }) : null;
  const type = PHOTO_TYPES.find((known) => known === pull?.photoType);
  if (pull?.photoName == null || type === undefined) return answer(404, 'There is no photo of this pull.');
  try {
    const bytes = await readFile(path.join(photoFolder(), path.basename(pull.photoName)));
    return new Response(bytes, {
      headers: {
        'content-type': type,
        'content-disposition': 'inline',
        'x-content-type-options': 'nosniff',
        'content-security-policy': "default-src 'none'; sandbox",
        'cache-control': 'private, no-cache',
      },
    });
  } catch {
    return answer(404, 'The file of this photo is missing in the data folder. Look for it in a backup.');
  }
}

/** Keeps the photo whose bytes are the body. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  if (!isFromOwnPage(request.headers)) return answer(403, 'Only a page of this app may send a photo.');
  const id = idSchema.safeParse((await params).id);
  if (!id.success) return answer(404, 'This pull is not there any more.');
  if (Number(request.headers.get('content-length') ?? 0) > MOST_PHOTO_BYTES) {
    return answer(413, 'This photo is larger than 9 MB. Let the phone make it smaller, and try again.');
  }
  const bytes = new Uint8Array(await request.arrayBuffer());
  const [personId, folder] = [await chosenPersonId(), photoFolder()];
  const result = await keepPullPhoto(await db(), { pullId: id.data, bytes, folder, personId, now: now() });
  return result.ok ? answer(201, 'Kept.') : answer(422, result.message);
}

function answer(status: number, message: string): Response {
  return Response.json(
    { ok: status < 300, message },
    { status, headers: { 'cache-control': 'no-store', 'x-content-type-options': 'nosniff' } },
  );
}
