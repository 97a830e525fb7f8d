import { randomBytes } from 'node:crypto';
import { mkdir, open, rm } from 'node:fs/promises';
import path from 'node:path';
import { MOST_PHOTO_BYTES, photoTypeOf } from '@/lib/contracts/photo-type';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { appendPullChange } from '@/prisma/data/pull-series';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export interface KeepPullPhotoRequest {
  readonly pullId: string;
  readonly bytes: Uint8Array;
  readonly folder: string;
  readonly personId: string | null;
  readonly now: Instant;
}

export type KeepPullPhotoResult = Done | Refusal<'no-pull' | 'too-large' | 'no-photo'>;

/**
 * Keeps a photo of a pulled specimen. The file is on the disk, whole, before the pull names it; the one that it named
 * before stays in the folder and in the history.
 */
export async function keepPullPhoto(database: Db, request: KeepPullPhotoRequest): Promise<KeepPullPhotoResult> {
  const { pullId, bytes, folder, personId, now } = request;
  if (bytes.length > MOST_PHOTO_BYTES) {
    const message = 'This photo is larger than 9 MB. Let the phone make it smaller, and try again.';
    return { ok: false, code: 'too-large', message };
  }
  const type = photoTypeOf(bytes);
  if (type === null) {
    return {
      ok: false,
      code: 'no-photo',
      message: 'This is no JPEG, PNG or WebP photo. Save it as one, and try again.',
    };
  }
  const name = `${randomBytes(16).toString('hex')}.${type.slice('image/'.length)}`;
  const file = path.join(folder, name);
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const handle = await open(file, 'wx', 0o600);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
  const result = await writeTx(database, async (tx): Promise<KeepPullPhotoResult> => {
    const pull = await tx.pull.findUnique({ where: { id: pullId }, select: { seriesId: true, photoName: true } });
    if (pull === null) return { ok: false, code: 'no-pull', message: 'This pull is not there any more.' };
    await tx.pull.update({ where: { id: pullId }, data: { photoName: name, photoType: type } });
    const [before, after] = [{ photoName: pull.photoName }, { photoName: name }];
    await appendPullChange(tx, pull.seriesId, { kind: 'photo-kept', pullId, at: now, personId, before, after });
    return DONE;
  });
  if (!result.ok) await rm(file, { force: true });
  return result;
}
