import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type CDPSession, chromium, type Page } from '@playwright/test';
import { serveWorkshop } from '../app/serve-workshop';
import { findBrowser } from '../screens/find-browser';
import { makeBigPlanWorkshop } from './big-plan';

/*
 * The timeline of a plan with 60 batches and a thousand bars in a real browser, on a desk and on a phone: how long the
 * frames take while it is scrolled, moved sideways, zoomed from a day to eight weeks and back, and while a bar is
 * dragged, and whether any piece of script holds the page up.
 */

/** Of issue 6: smooth. In the middle: the rest is the computer's load. */
const MOST_MEDIAN_FRAME_MS = 17.5;
/** Longest that a task may hold the page up, ms. */
const MOST_TASK_MS = 50;
const FRAMES = 180;
const NOWHERE = { x: 0, y: 0, reach: 0 };

interface Course {
  readonly framesMs: readonly number[];
  readonly longTasksMs: readonly number[];
}

/** Prints the figures of both widths; true when both keep to the targets. */
export async function run(): Promise<boolean> {
  const folder = mkdtempSync(path.join(tmpdir(), 'bench-timeline-'));
  const databaseUrl = `file:${path.join(folder, 'workshop.db')}`;
  await makeBigPlanWorkshop(databaseUrl, Date.now());
  const workshop = await serveWorkshop({ databaseUrl, folder });
  const { executablePath, env } = findBrowser();
  const browser = await chromium.launch({ executablePath, env, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const first = await browser.newPage();
    first.setDefaultTimeout(120_000);
    await first.goto(`${workshop.url}/plan`);
    await first.getByRole('button', { name: 'Make a plan' }).click();
    await first.getByText('The search is over.').waitFor();
    await first.getByRole('button', { name: 'Accept this plan' }).click();
    await first.getByText(/^As accepted/).waitFor();
    await first.close();
    let isWithin = true;
    for (const width of [1440, 360]) {
      const page = await browser.newPage({ viewport: { width, height: 900 } });
      // The script runner names the functions it sends to the page by a helper that the page does not have.
      await page.addInitScript({ content: 'globalThis.__name = (named) => named;' });
      await page.goto(`${workshop.url}/plan`, { waitUntil: 'networkidle' });
      isWithin = (await measured(page, width)) && isWithin;
      await page.close();
    }
    return isWithin;
  } finally {
    await browser.close();
    await workshop.end();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measured(page: Page, width: number): Promise<boolean> {
  const session = await page.context().newCDPSession(page);
  // In processor time, so that a busy computer counts for nothing.
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  const drawing = page.locator('svg[aria-label^="Plan over time"]');
  await drawing.scrollIntoViewIfNeeded();
  const box = page.locator('div:has(> div > div > svg[aria-label^="Plan over time"])');
  const frame = await box.evaluate((element) => {
    element.scrollIntoView({ block: 'start' });
    const { x, y, width: w, height } = element.getBoundingClientRect();
    return { x, y, width: w, height };
  });
  let isWithin = true;
  const course = async (name: string, work: () => Promise<Course>) => {
    isWithin = report(`${width} px, ${name}`, await work(), await bars(page)) && isWithin;
  };
  const spent = (name: string, work: () => Promise<Course>) => course(name, () => withCpu(session, work));
  await zoom(page, 'Wider', 6);
  await spent('eight weeks, scrolling', () => inPage(page, { kind: 'scroll', frames: FRAMES, ...NOWHERE }));
  await spent('eight weeks, moving', () => movedSideways(page, frame));
  await zoom(page, 'Closer', 3);
  await spent('a week, moving', () => movedSideways(page, frame));
  await spent('a week, dragging a bar', () => draggedBar(page));
  await spent('zooming from eight weeks to a day and back', () =>
    inPage(page, { kind: 'zoom', frames: 96, ...NOWHERE }),
  );
  return isWithin;
}

/** A course in the page. */
function inPage(page: Page, course: InPage): Promise<Course> {
  return page.evaluate(courseInPage, course);
}

async function bars(page: Page): Promise<number> {
  return page.locator('[data-visit]').count();
}

async function zoom(page: Page, button: string, times: number): Promise<void> {
  for (let i = 0; i < times; i += 1) await page.getByRole('button', { name: button, exact: true }).click();
}

let cpuMs = 0;

/** Notes the main thread's processor time for the report. */
async function withCpu(session: CDPSession, work: () => Promise<Course>): Promise<Course> {
  const used = async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return 1_000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0);
  };
  const before = await used();
  const course = await work();
  cpuMs = (await used()) - before;
  return course;
}

async function movedSideways(
  page: Page,
  frame: { x: number; y: number; width: number; height: number },
): Promise<Course> {
  // The ground between two bars: the name of a row has none.
  const from = { x: frame.x + frame.width / 2, y: frame.y + 70 };
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  const course = await inPage(page, { kind: 'move', frames: FRAMES, ...from, reach: frame.width * 0.8 });
  await page.mouse.up();
  await page.keyboard.press('Escape');
  if (await page.getByRole('dialog').isVisible()) await page.getByRole('button', { name: 'Close' }).click();
  return course;
}

async function draggedBar(page: Page): Promise<Course> {
  const bar = page.locator('[data-visit].cursor-grab rect').first();
  await bar.evaluate((element) => element.scrollIntoView({ block: 'center', inline: 'center' }));
  const box = await bar.boundingBox();
  if (box === null) throw new Error('there is nothing to drag');
  const from = { x: box.x + Math.min(2, box.width / 2), y: box.y + box.height / 2 };
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  const course = await inPage(page, { kind: 'move', frames: FRAMES, ...from, reach: 120 });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  return course;
}

interface InPage {
  readonly kind: 'move' | 'scroll' | 'zoom';
  readonly frames: number;
  /** Where the pointer is pressed, and how far it goes to either side. */
  readonly x: number;
  readonly y: number;
  readonly reach: number;
}

/**
 * Runs in the page, a step a frame: moves the pressed pointer to and fro, scrolls the rows down and up again, or zooms
 * out and in by a step every fourth frame.
 */
async function courseInPage({ kind, frames, x, y, reach }: InPage): Promise<Course> {
  const framesMs: number[] = [];
  const longTasksMs: number[] = [];
  const observer = new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) longTasksMs.push(entry.duration);
  });
  observer.observe({ type: 'longtask' });
  const drawing = document.querySelector('svg[aria-label^="Plan over time"]');
  const box = drawing?.closest('.overflow-y-auto');
  const step = (i: number) => {
    if (kind === 'move') {
      const clientX = x + reach * Math.sin((2 * Math.PI * i) / 90);
      drawing?.dispatchEvent(new PointerEvent('pointermove', { bubbles: true, pointerId: 1, clientX, clientY: y }));
    } else if (kind === 'scroll' && box != null) {
      box.scrollTop = ((box.scrollHeight - box.clientHeight) * (1 - Math.cos((2 * Math.PI * i) / frames))) / 2;
    } else if (kind === 'zoom' && i % 4 === 0) {
      const name = i % 48 < 24 ? 'Wider' : 'Closer';
      document.querySelector<HTMLButtonElement>(`button[aria-label="${name}"]`)?.click();
    }
  };
  const nextFrame = () => new Promise<number>((resolve) => requestAnimationFrame(resolve));
  let before = await nextFrame();
  for (let i = 0; i < frames; i += 1) {
    step(i);
    const now = await nextFrame();
    framesMs.push(now - before);
    before = now;
  }
  observer.disconnect();
  return { framesMs, longTasksMs };
}

function report(name: string, { framesMs, longTasksMs }: Course, barCount: number): boolean {
  const seconds = framesMs.reduce((sum, ms) => sum + ms, 0) / 1000;
  const medianMs = percentile(framesMs, 0.5);
  const longestMs = Math.max(0, ...longTasksMs);
  const parts = [
    `Timeline at ${name} (${barCount} bars drawn)`,
    `${(framesMs.length / seconds).toFixed(1)} frames a second`,
    `frame median ${medianMs.toFixed(1)} ms, 95 % ${percentile(framesMs, 0.95).toFixed(1)} ms`,
    `main thread ${(cpuMs / framesMs.length).toFixed(1)} ms of processor a frame`,
    longTasksMs.length === 0
      ? 'no task over 50 ms'
      : `${longTasksMs.length} tasks over 50 ms, longest ${longestMs.toFixed(0)} ms`,
  ];
  console.log(parts.join(' | '));
  return medianMs <= MOST_MEDIAN_FRAME_MS && longestMs <= MOST_TASK_MS;
}

function percentile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}
