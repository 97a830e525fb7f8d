import { Section } from '@/app/_ui/page';
import { conclusion } from '@/lib/pulltest/conclusion';
import { nextTests } from '@/lib/pulltest/next-test';
import type { PullAnalysis } from '@/lib/pulltest/pull-analysis';
import { offText, type PullWords } from '@/lib/pulltest/pull-words';
import type { SeriesGoal } from '@/lib/pulltest/series-analysis';
import { wordsText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { DepthTable, MixEffectTable, TallyTable, WithAndWithout } from './analysis-tables';
import { ConclusionWords } from './conclusion-words';
import { LowerWhy } from './lower-why';
import { ReadingTable } from './reading-table';
import { StrengthPlot } from './strength-plot';

export interface ConditionAnalysisProps {
  readonly analysis: PullAnalysis;
  readonly goal: SeriesGoal;
  readonly words: PullWords;
  readonly mixes: readonly { readonly id: string; readonly name: string }[];
  readonly units: UnitChoice;
  /** The only one on the page: its name stands above already. */
  readonly isAlone: boolean;
}

/** All that one wood, glue and wire of a series says. */
export function ConditionAnalysis({ analysis, goal, words, mixes, units, isAlone }: ConditionAnalysisProps) {
  const { answer, tally, pulls } = analysis;
  const used = new Set(pulls.map(({ record }) => record.mixId));
  const next = nextTests(analysis, goal, words);
  const of = isAlone ? '' : `: ${analysis.condition}`;
  return (
    <>
      <Section title={`The answer${of}`}>
        <ConclusionWords sentences={conclusion(analysis, goal, words)} units={units} />
        <LowerWhy analysis={analysis} goal={goal} units={units} />
      </Section>
      <Section title={`Strength against depth${of}`}>
        <StrengthPlot
          pulls={pulls}
          curve={answer.curve}
          isByDepth={answer.lower.ok && answer.lower.model.kind === 'levels'}
          mixes={mixes.filter(({ id }) => used.has(id))}
          demandN={goal.demandN}
          wireN={tally.wireBrokeN[0] ?? null}
          units={units}
        />
        <DepthTable analysis={analysis} units={units} />
      </Section>
      <div className="grid gap-8 lg:grid-cols-2">
        <Section title="With and without">
          <WithAndWithout analysis={analysis} units={units} words={words} />
        </Section>
        <Section title="How they ended">
          <TallyTable analysis={analysis} />
        </Section>
      </div>
      <Section title="Mixes" lead="Every mix against the others at the same depths.">
        <MixEffectTable analysis={analysis} words={words} />
      </Section>
      <Section title="Readings that stand out">
        <Outliers analysis={analysis} words={words} />
      </Section>
      {next.length > 0 && (
        <Section title="What to test next">
          <ul className="grid max-w-3xl list-disc gap-1 pl-5">
            {next.map(({ words: parts }) => {
              const text = wordsText(parts, units);
              return <li key={text}>{text}</li>;
            })}
          </ul>
        </Section>
      )}
      <Section title="Every reading">
        <ReadingTable pulls={pulls} words={words} units={units} />
      </Section>
    </>
  );
}

/** Which readings are further off than chance lets expect, and what that flag means at this number of readings. */
function Outliers({ analysis: { answer }, words }: Pick<ConditionAnalysisProps, 'analysis' | 'words'>) {
  const { outliers } = answer;
  if (!outliers.ok) {
    return <p className="max-w-3xl">Too few readings to tell one that stands out from its own depth and mix.</p>;
  }
  const { flags, critical, compared } = outliers;
  return (
    <div className="grid max-w-3xl gap-2">
      <p>
        {flags.length === 0
          ? `None of ${compared}.`
          : flags.map(({ pullId, difference }) => `${words.pull(pullId)} reads ${offText(difference)}`).join('; ') +
            '.'}
      </p>
      <p className="text-sm text-ink-soft">
        With {compared} readings, a flag is put on one that lies more than {critical.toFixed(1)} standard errors off
        what its depth and mix let expect: by accident that happens in one series of twenty. A flag is a question, never
        a reason to leave a reading out.
      </p>
    </div>
  );
}
