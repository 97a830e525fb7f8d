import { answerSentences, limitSentences } from '@/lib/pulltest/answer-sentences';
import { canRecur, exclusionText } from '@/lib/pulltest/exclusion';
import type { PullAnalysis } from '@/lib/pulltest/pull-analysis';
import {
  changeText,
  force,
  length,
  offText,
  outReasonText,
  type PullWords,
  percentText,
  pText,
  pullsText,
  type Sentence,
} from '@/lib/pulltest/pull-words';
import type { SeriesAnalysis, SeriesGoal } from '@/lib/pulltest/series-analysis';
import { worstIsAboveChance } from '@/lib/statistics/order-statements';

/**
 * What a series says in plain words: the answer with its limits, then what to look into. Never a claim where the
 * analysis refuses one, and always what the claim rests on.
 */
export function conclusion(analysis: PullAnalysis, goal: SeriesGoal, words: PullWords): Sentence[] {
  return [
    ...answerSentences(analysis.answer, goal),
    ...limitSentences(analysis),
    ...mixSentences(analysis.answer, words),
    ...outlierSentences(analysis.answer, words),
    ...exclusionSentences(analysis),
    ...depthSentences(analysis.answer),
    ...worstSentence(analysis),
  ];
}

function mixSentences({ mixes }: SeriesAnalysis, words: PullWords): Sentence[] {
  if (mixes === null) return [];
  if (mixes.named === null) {
    if (mixes.effects.length !== 2) return [];
    const [first] = mixes.effects;
    const off = first === undefined ? 0 : Math.abs(first.difference);
    if (off < 0.1) return [];
    return [
      {
        kind: 'question',
        words: [`The two mixes differ by ${percentText(off)}. From two nobody can tell which is the odd one.`],
      },
    ];
  }
  const { mixId, difference, p } = mixes.named;
  const sure = p === null ? 'too few pulls for a test' : p < 0.05 ? pText(p) : `${pText(p)}, which may be chance`;
  const pieces = words.pieces(mixId);
  const where = pieces === null ? '' : ` ${capital(pieces)} are joined with it.`;
  const sentences: Sentence[] = [
    {
      kind: 'question',
      words: [
        `${capital(words.mix(mixId))} reads ${offText(difference)} against the others (${sure}).${where} Ratio, stirring, temperature, pot life, hours of cure: was anything different? If it can happen again, it belongs in.`,
      ],
    },
  ];
  if (mixes.restP !== null && mixes.restP < 0.05) {
    sentences.push({
      kind: 'question',
      words: [`The other mixes differ among themselves too (${pText(mixes.restP)}).`],
    });
  }
  return sentences;
}

function outlierSentences({ outliers, sensitivity }: SeriesAnalysis, words: PullWords): Sentence[] {
  const sentences: Sentence[] = [];
  if (outliers.ok) {
    for (const { pullId, difference } of outliers.flags) {
      sentences.push({
        kind: 'question',
        words: [
          `${words.pull(pullId)} reads ${offText(difference)} for its depth and mix. Among ${outliers.compared} pulls that happens by accident in one series of twenty. It stays in; look at the specimen.`,
        ],
      });
    }
  }
  for (const { without, result } of sensitivity) {
    const name = without.kind === 'pull' ? words.pull(without.id) : words.mix(without.id);
    sentences.push({
      kind: 'note',
      words: result.ok
        ? [`Without ${name} the lower value would be `, force(result.lowerN), `${changeText(result.change)}.`]
        : [`Without ${name} there would be no lower value.`],
    });
  }
  return sentences;
}

function exclusionSentences({ answer, withExcluded, tally, pulls }: PullAnalysis): Sentence[] {
  const reasons = new Set(pulls.flatMap(({ record }) => record.exclusion?.reason ?? []));
  const findings = [...reasons].filter(canRecur).map(
    (reason): Sentence => ({
      kind: 'question',
      words: [
        `${exclusionText(reason)}: if that can happen to a lure too, it is a finding about the work and not only a reason to leave a pull out.`,
      ],
    }),
  );
  return [...findings, ...leftOutSentences(answer, withExcluded, tally)];
}

function leftOutSentences(
  answer: SeriesAnalysis,
  withExcluded: SeriesAnalysis | null,
  tally: PullAnalysis['tally'],
): Sentence[] {
  const out = tally.out.map(
    ({ reason, pulls }): Sentence => ({
      kind: 'note',
      words: [`Not counted: ${pullsText(pulls)}, ${outReasonText(reason)}.`],
    }),
  );
  if (withExcluded === null) return out;
  const now = answer.atDepth;
  const then = withExcluded.atDepth;
  if (then === null)
    return [...out, { kind: 'note', words: ['With the pulls that were left out there would be no lower value.'] }];
  const compared = now === null ? '' : changeText(then.lowerN / now.lowerN - 1);
  return [
    ...out,
    {
      kind: 'note',
      words: [
        'With the pulls that were left out the lower value at ',
        length(then.depthMm),
        ' would be ',
        force(then.lowerN),
        `${compared}.`,
      ],
    },
  ];
}

function depthSentences({ depths }: SeriesAnalysis): Sentence[] {
  return depths.weakerThanShallowerMm.map((depthMm) => ({
    kind: 'question' as const,
    words: [
      'At ',
      length(depthMm),
      ' the joints held less than shallower ones did. Few pulls can do that by accident; look at how they failed.',
    ],
  }));
}

/** The worst reading is no lower value: say so wherever few pulls make it look like one. */
function worstSentence({ answer, tally }: PullAnalysis): Sentence[] {
  const fewest = answer.depths.depths.filter(({ exactPulls }) => exactPulls >= 2).map(({ exactPulls }) => exactPulls);
  if (fewest.length === 0 || tally.exact === 0) return [];
  const n = Math.min(...fewest);
  if (n > 10) return [];
  return [
    {
      kind: 'note',
      words: [
        `The worst of ${n} lies above what one joint in twenty falls below ${percentText(worstIsAboveChance(n))} of the time: it is no lower value.`,
      ],
    },
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
