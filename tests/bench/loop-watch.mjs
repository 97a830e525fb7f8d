// Loaded into a served app before anything else (NODE_OPTIONS): watches how long its main thread is at one thing. Told by
// SIGUSR2 it writes what it saw since the last time to LOOP_WATCH_FILE. In processor time, so that a busy computer counts
// for nothing: Linux keeps it for each thread, and between two turns of a timer lies one stretch of work.
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { isMainThread } from 'node:worker_threads';

const file = process.env.LOOP_WATCH_FILE;
const clock = `/proc/${process.pid}/task/${process.pid}/schedstat`;

function usedMs() {
  return existsSync(clock) ? Number(readFileSync(clock, 'utf8').split(' ')[0]) / 1e6 : Number.NaN;
}

if (file !== undefined && isMainThread) {
  const delay = monitorEventLoopDelay({ resolution: 2 });
  delay.enable();
  let stretches = [];
  let before = usedMs();
  setInterval(() => {
    const used = usedMs();
    if (used - before > 5) stretches.push(used - before);
    before = used;
  }, 1).unref();
  process.on('SIGUSR2', () => {
    const seen = {
      stretchesMs: stretches.sort((a, b) => b - a),
      delayMs: { median: delay.percentile(50) / 1e6, p95: delay.percentile(95) / 1e6, most: delay.max / 1e6 },
      memoryMb: process.memoryUsage.rss() / 1e6,
    };
    stretches = [];
    delay.reset();
    writeFileSync(`${file}.part`, JSON.stringify(seen));
    renameSync(`${file}.part`, file);
  });
}
