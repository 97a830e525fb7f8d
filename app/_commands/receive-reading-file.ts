import { createHash } from 'node:crypto';
import { open } from 'node:fs/promises';
import type { ReadingImportJob } from '@/app/_server/reading-imports';

/** Longest file taken. Chosen: a million rows of some 60 characters. */
export const LONGEST_FILE_BYTES = 64 * 1024 * 1024;

export type ReceiveFileResult = { readonly ok: true } | { readonly ok: false; readonly code: 'too-long' | 'empty' };

/**
 * Puts a file that is being sent on disk, piece by piece, and takes its SHA-256 on the way. Nothing is kept of a file
 * that is too long or whose sender hangs up; that is for the caller, who forgets the job.
 */
export async function receiveReadingFile(
  job: ReadingImportJob,
  chunks: AsyncIterable<Uint8Array>,
): Promise<ReceiveFileResult> {
  const hash = createHash('sha256');
  const file = await open(job.filePath, 'w', 0o600);
  try {
    for await (const chunk of chunks) {
      job.fileBytes += chunk.length;
      if (job.fileBytes > LONGEST_FILE_BYTES) return { ok: false, code: 'too-long' };
      hash.update(chunk);
      await file.writeFile(chunk);
      job.stage = { name: 'receiving', receivedBytes: job.fileBytes };
    }
  } finally {
    await file.close();
  }
  job.fileHash = hash.digest('hex');
  return job.fileBytes === 0 ? { ok: false, code: 'empty' } : { ok: true };
}
