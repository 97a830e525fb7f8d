import type { ChildProcess } from 'node:child_process';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { freePort } from '../prisma/free-port';

export interface WorkshopOptions {
  /** Default: a new SQLite file in the workshop's own folder. */
  readonly databaseUrl?: string;
  /** Without the demo workshop. */
  readonly startsEmpty?: boolean;
  /** Settings on top. */
  readonly env?: Readonly<Record<string, string>>;
  /** Folder of an earlier run, to go on with its data. Default: a new one that goes with `stop`. */
  readonly folder?: string;
}

/** The real app as `npm start` serves it, in a process of its own. */
export interface Workshop {
  readonly url: string;
  readonly databaseUrl: string;
  readonly folder: string;
  readonly process: ChildProcess;
  /** Everything it printed so far. */
  output(): string;
  /** Lets the app's clock run this much ahead of the true one from now on. */
  setClockAhead(ms: number): void;
  /** Ends it as Ctrl-C would, and resolves with its exit code. */
  end(): Promise<number | null>;
  /** Cuts it off with SIGKILL. */
  kill(): Promise<void>;
  /** Ends it if it still runs, and removes its folder unless it was given. */
  stop(): Promise<void>;
}

/** Longest from the command to the first answer, the build included. */
const READY_WITHIN_MS = 240_000;

/** Starts the app and resolves when it answers. Rejects with its output when it ends instead. */
export async function serveWorkshop(options: WorkshopOptions = {}): Promise<Workshop> {
  const folder = options.folder ?? mkdtempSync(path.join(tmpdir(), 'workshop-'));
  const databaseUrl = options.databaseUrl ?? `file:${path.join(folder, 'workshop.db')}`;
  const clockFile = path.join(folder, 'clock-ahead');
  if (!existsSync(clockFile)) writeFileSync(clockFile, '0');
  const port = await freePort();
  const child = spawn(process.execPath, ['--import', 'tsx', path.join('prisma', 'ops', 'start.ts')], {
    env: {
      ...process.env,
      DATABASE_URL: databaseUrl,
      DATA_DIR: folder,
      HOST: '127.0.0.1',
      PORT: String(port),
      START_EMPTY: options.startsEmpty === true ? '1' : '0',
      TEST_CLOCK_FILE: clockFile,
      ...options.env,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (data) => {
      output += data;
    });
  }
  const killAtExit = () => void child.kill('SIGKILL');
  process.once('exit', killAtExit);
  const ended = once(child, 'exit').then(([code]: (number | null)[]) => {
    process.off('exit', killAtExit);
    return code ?? null;
  });
  await waitUntilReady(child, () => output);

  const endWith = async (signal: NodeJS.Signals) => {
    child.kill(signal);
    return ended;
  };
  const end = () => endWith('SIGTERM');
  return {
    url: `http://127.0.0.1:${port}`,
    databaseUrl,
    folder,
    process: child,
    output: () => output,
    setClockAhead: (ms) => writeFileSync(clockFile, String(ms)),
    end,
    kill: async () => void (await endWith('SIGKILL')),
    stop: async () => {
      await end();
      if (options.folder === undefined) rmSync(folder, { recursive: true, force: true });
    },
  };
}

function waitUntilReady(child: ChildProcess, output: () => string): Promise<void> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => {
      child.kill('SIGKILL');
      reject(new Error(`the app did not get ready in time:\n${output()}`));
    }, READY_WITHIN_MS);
    const finish = (settle: () => void) => {
      clearTimeout(timer);
      settle();
    };
    child.stdout?.on('data', () => {
      if (output().includes('Lurewright is ready')) finish(resolve);
    });
    child.once('exit', (code) => finish(() => reject(new Error(`the app ended with code ${code}:\n${output()}`))));
  });
}
