import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { chromium } from '@playwright/test';

export interface Browser {
  readonly executablePath: string;
  /** Where it was found, for the summary. */
  readonly origin: string;
  readonly env: Record<string, string>;
}

const DEBIAN_CHROMIUM = '/usr/bin/chromium';

/**
 * The headless browser of the tests: the one named in CHROMIUM_PATH, else the system's, else one that Playwright
 * already downloaded, else the one that came with npm, which needs neither a download nor a system package.
 */
export function findBrowser(): Browser {
  const env = definedOnly(process.env);
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (!existsSync(named)) throw new Error(`CHROMIUM_PATH names ${named}, which is not there.`);
    return { executablePath: named, origin: 'CHROMIUM_PATH', env };
  }
  if (existsSync(DEBIAN_CHROMIUM)) return { executablePath: DEBIAN_CHROMIUM, origin: 'the system', env };
  const downloaded = chromium.executablePath();
  if (existsSync(downloaded)) return { executablePath: downloaded, origin: 'Playwright', env };
  return unpackBrowser(env);
}

/**
 * Unpacks the browser from npm into a folder of ours: left alone it would use a fixed name in the shared temporary
 * folder. It brings the libraries and fonts that a bare machine lacks, when told that it runs in such a place.
 */
function unpackBrowser(env: Record<string, string>): Browser {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('No browser was found. Install Chromium or Chrome and name it: CHROMIUM_PATH=/path/to/chrome');
  }
  const folder = path.resolve('node_modules', '.cache', 'test-browser');
  mkdirSync(folder, { recursive: true });
  const script = "import('@sparticuz/chromium').then(async ({ default: c }) => console.log(await c.executablePath()))";
  const executablePath = execFileSync(process.execPath, ['-e', script], {
    env: { ...process.env, TMPDIR: folder, VERCEL: '1' },
    encoding: 'utf8',
  }).trim();
  const libraries = path.join(folder, 'al2023', 'lib');
  const own = isComplete(executablePath) ? {} : { LD_LIBRARY_PATH: libraries };
  return {
    executablePath,
    origin: 'npm',
    env: { ...env, ...own, FONTCONFIG_FILE: fontSettings(folder) },
  };
}

/** Settings that name the fonts where they were unpacked to: those that come along name fixed folders, and without any font the browser ends. */
function fontSettings(folder: string): string {
  const file = path.join(folder, 'fonts-here.conf');
  const dirs = [path.join(folder, 'fonts'), '/usr/share/fonts'].map((dir) => `<dir>${dir}</dir>`);
  const cache = `<cachedir>${path.join(folder, 'fonts-cache')}</cachedir>`;
  writeFileSync(file, `<?xml version="1.0"?>\n<fontconfig>${dirs.join('')}${cache}</fontconfig>\n`);
  return file;
}

/** Whether the system has every library a program needs. */
function isComplete(program: string): boolean {
  try {
    return !execFileSync('ldd', [program], { encoding: 'utf8' }).includes('not found');
  } catch {
    return false;
  }
}

function definedOnly(env: NodeJS.ProcessEnv): Record<string, string> {
  return Object.fromEntries(Object.entries(env).filter((entry): entry is [string, string] => entry[1] !== undefined));
}
