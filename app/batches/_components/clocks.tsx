import Link from 'next/link';
import type { BenchEntry } from '@/app/_server/bench';
import { Section } from '@/app/_ui/page';
import { timelineOf } from '@/lib/batch/timeline';
import type { TemperatureCourse } from '@/lib/cure/course';
import type { Instant } from '@/lib/units/instant';
import type { ShopSettings } from '@/prisma/data/shop';
import { CureTable } from './cure-table';
import { Timeline } from './timeline';
import { SPAN_WORDS, SPANS, spanOf, timeRange } from './timeline-range';

export interface ClocksProps {
  readonly entry: BenchEntry;
  readonly course: TemperatureCourse;
  readonly shop: ShopSettings;
  readonly nowAt: Instant;
  /** The span asked for in the address; empty: the one that fits. */
  readonly spanWord: string;
  readonly hrefOf: (span: string) => string;
}

/** A batch's clocks: drawn over time with the temperature under them, and in words. */
export function Clocks({ entry, course, shop, nowAt, spanWord, hrefOf }: ClocksProps) {
  const timeline = timelineOf(entry.batch);
  const span = spanOf(spanWord, timeline, nowAt);
  const range = timeRange(timeline, span, nowAt);
  if (range === null) {
    return (
      <Section title="Clocks">
        <p className="text-ink-soft">
          The first mix starts the first clock: its pot life, and then the hours at which its joints and coats may be
          touched, drawn here with the temperature of the shop under them.
        </p>
      </Section>
    );
  }
  return (
    <Section
      title="Clocks"
      id="clocks"
      actions={
        <nav aria-label="How much time is drawn" className="flex flex-wrap gap-x-1">
          {SPANS.map((choice) => (
            <Link
              key={choice}
              href={`${hrefOf(choice)}#clocks`}
              prefetch={false}
              scroll={false}
              aria-current={choice === span ? 'true' : undefined}
              className="inline-flex min-h-touch items-center px-3 underline-offset-4 hover:underline aria-[current]:font-bold aria-[current]:underline aria-[current]:decoration-accent aria-[current]:decoration-2"
            >
              {SPAN_WORDS[choice]}
            </Link>
          ))}
        </nav>
      }
    >
      <Timeline
        entry={entry}
        timeline={timeline}
        course={course}
        range={range}
        nowAt={nowAt}
        zone={shop.timeZone}
        unit={shop.temperatureUnit}
      />
      <p className="text-sm text-ink-soft">
        Mixes run to the lower end of their pot life; the outline shows the upper end, a stroke the closing. A mark on a
        cure is the hour from which the milestone counts as reached, the line before it the hours in which it may be
        reached; the stripe under it is its recoat window. Temperature: full line read, broken line the usual week, with
        the plausible band behind.
      </p>
      <details>
        <summary className="inline-flex min-h-touch items-center font-semibold underline decoration-line-strong underline-offset-4">
          All hours in words, and why
        </summary>
        <div className="pt-3">
          <CureTable entry={entry} timeline={timeline} unit={shop.temperatureUnit} />
        </div>
      </details>
    </Section>
  );
}
