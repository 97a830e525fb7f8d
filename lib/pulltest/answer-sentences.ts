import type { PullAnalysis } from '@/lib/pulltest/pull-analysis';
import { force, length, percentText, pText, pullsText, type Sentence } from '@/lib/pulltest/pull-words';
import type { SeriesAnalysis, SeriesGoal } from '@/lib/pulltest/series-analysis';
import { seriesRefusalText } from '@/lib/pulltest/series-refusal';
import { LEAST_SCATTER } from '@/lib/statistics/lower-percentile';

/** The answer to the demand, or why there is none. */
export function answerSentences({ lower, least, atDepth }: SeriesAnalysis, goal: SeriesGoal): Sentence[] {
  if (!lower.ok) return [{ kind: 'answer', words: [seriesRefusalText(lower.code)] }];
  const { content, confidence } = goal.certainty;
  const sure = `With ${percentText(confidence)} confidence at least ${percentText(content)} of joints made like these, glued with a mix yet to be mixed, hold `;
  const sentences: Sentence[] = [];
  if (least !== null && goal.demandN !== null) {
    switch (least.kind) {
      case 'depth':
        sentences.push({
          kind: 'answer',
          words: [
            length(least.embedmentMm),
            ' deep is enough for ',
            force(goal.demandN),
            '. ',
            sure,
            force(least.lowerN),
            ' or more there.',
          ],
        });
        break;
      case 'shallowest-suffices':
        sentences.push({
          kind: 'answer',
          words: [
            'The shallowest depth tested, ',
            length(least.embedmentMm),
            ', is enough for ',
            force(goal.demandN),
            '; shallower was not tested. ',
            sure,
            force(least.lowerN),
            ' or more there.',
          ],
        });
        break;
      case 'not-reached':
        sentences.push({
          kind: 'answer',
          words: [
            force(goal.demandN),
            ' is not reached within the depths tested: at ',
            length(least.deepestMm),
            ' the lower value is ',
            force(least.lowerN),
            '. Nothing is said beyond that depth.',
          ],
        });
        break;
    }
  } else if (atDepth !== null) {
    sentences.push({
      kind: 'answer',
      words: [sure, force(atDepth.lowerN), ' or more at ', length(atDepth.depthMm), '.'],
    });
  }
  return sentences;
}

/** What the answer rests on and where it ends. */
export function limitSentences({ answer, tally }: PullAnalysis): Sentence[] {
  const { lower } = answer;
  if (!lower.ok) return [];
  const { model } = lower;
  const { mixes, perMix, errorMean } = model.kind === 'line' ? model.line.scatter : model.levels.scatter;
  const sentences: Sentence[] = [
    {
      kind: 'limit',
      words: [
        `This rests on ${pullsText(tally.exact + tally.atLeast)} of ${mixes} mixes that scatter by ${percentText(Math.expm1(model.scatter))}, mixes among themselves included. One kind of wood, glue and wire; slow straight pulls; nothing is said of shock, water, heat, ageing or a side pull.`,
      ],
    },
  ];
  if (tally.atLeast > 0) {
    sentences.push({
      kind: 'limit',
      words: [`${pullsText(tally.atLeast)} stopped before the joint failed and count as "at least".`],
    });
  }
  if (model.scatter < LEAST_SCATTER) {
    sentences.push({
      kind: 'limit',
      words: [
        `The pulls scatter by less than ${percentText(LEAST_SCATTER)}, which so few cannot show: ${percentText(LEAST_SCATTER)} was used.`,
      ],
    });
  }
  if (model.kind === 'levels' && model.because === 'line-does-not-fit' && model.lackOfFit !== null) {
    sentences.push({
      kind: 'limit',
      words: [
        `Strength does not follow one line over depth (${pText(model.lackOfFit.p)}), as when the way of failing changes. Each depth stands for itself, and nothing is said between them.`,
      ],
    });
  }
  if (errorMean !== null && perMix < 2) {
    sentences.push({
      kind: 'limit',
      words: ['Some mixes hold a single pull: how mixes differ is known only roughly.'],
    });
  }
  return sentences;
}
