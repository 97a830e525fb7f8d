import 'server-only';
import path from 'node:path';

/** Folder of the photos, beside the database and the backups. */
export function photoFolder(): string {
  return path.resolve(process.env.DATA_DIR ?? './data', 'photos');
}
