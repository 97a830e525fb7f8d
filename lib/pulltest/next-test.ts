import type { PullAnalysis } from '@/lib/pulltest/pull-analysis';
import { force, length, type PullWords, type Sentence } from '@/lib/pulltest/pull-words';
import type { SeriesGoal } from '@/lib/pulltest/series-analysis';
import { mixesNeeded } from '@/lib/statistics/depth-power';

/** Between-mix scatter that is as large as the scatter within: more mixes tell more than more pulls. */
const MIXES_MATTER = 2;
/** Share of pulls ended by the wire from which a stronger wire is worth its while. */
const MANY_WIRES = 0.25;

/** What the next series should do, the most telling first. Chosen rules, each from what this series could not tell. */
export function nextTests({ answer, tally, pulls }: PullAnalysis, goal: SeriesGoal, words: PullWords): Sentence[] {
  const next: Sentence[] = [];
  const add = (...parts: Sentence['words']) => next.push({ kind: 'note', words: parts });
  const { lower, least, mixes } = answer;
  if (!lower.ok) {
    if (lower.code === 'fewer-than-3-mixes') {
      add('Glue one specimen of each depth with a further mix, until there are three mixes or more.');
    }
    if (lower.code === 'slope-not-positive') add('Repeat the shallowest and the deepest side by side in three mixes.');
  }
  if (least?.kind === 'not-reached') {
    add('Test deeper than ', length(least.deepestMm), ', or a wood, glue or wire that holds more.');
  }
  if (least?.kind === 'shallowest-suffices' && least.lowerN > 2 * (goal.demandN ?? Number.POSITIVE_INFINITY)) {
    add('The shallowest depth holds more than twice what is asked: test shallower ones if depth is dear.');
  }
  const wires = tally.modes.filter(({ mode }) => mode === 'wire-broke' || mode === 'eye-opened');
  const ended = wires.reduce((sum, row) => sum + row.pulls, 0);
  const weakest = tally.wireBrokeN[0];
  if (tally.pulls > 0 && ended / tally.pulls >= MANY_WIRES) {
    if (weakest === undefined) add('Close or weld the eyes of the specimens: many opened before the joint failed.');
    else
      add('Use a stronger wire in the specimens: this one broke from ', force(weakest), ' on, before the joint did.');
  }
  if (mixes?.named != null) {
    add(`Pull more joints of ${words.mix(mixes.named.mixId)}, or of a mix made the same way on purpose.`);
  }
  if (lower.ok) {
    const scatter = lower.model.kind === 'line' ? lower.model.line.scatter : lower.model.levels.scatter;
    const ratio = scatter.errorMean === null ? null : scatter.mixMean / scatter.errorMean;
    if (ratio !== null && ratio > MIXES_MATTER && scatter.mixes < 6) {
      add(
        `Mixes differ more than pulls of one mix: ${scatter.mixes + 2} mixes would raise the lower value more than further pulls of these.`,
      );
    }
    next.push(...depthsToTell(answer, scatter.errorMean));
  }
  if (pulls.some(({ marks }) => marks.includes('scale-not-checked') || marks.includes('scale-not-named'))) {
    add('Check the scale against a known weight before the next pull, and write its name down.');
  }
  return next;
}

/** How many mixes it takes to tell the two middle depths apart, where this series had fewer. */
function depthsToTell(answer: PullAnalysis['answer'], errorMean: number | null): Sentence[] {
  const { depths } = answer.depths;
  const middle = Math.floor(depths.length / 2);
  const [low, high] = [depths[middle - 1], depths[middle]];
  if (low?.middleN == null || high?.middleN == null || errorMean === null || !(errorMean > 0)) return [];
  const ratio = high.middleN / low.middleN;
  if (!(ratio > 1.02)) return [];
  const variation = Math.sqrt(Math.expm1(errorMean));
  const mixes = mixesNeeded({ ratio, variation, levels: depths.length });
  const had = answer.mixes?.effects.length ?? 0;
  if (mixes === null || mixes <= had) return [];
  return [
    {
      kind: 'note',
      words: [
        'To tell ',
        length(low.depthMm),
        ' from ',
        length(high.depthMm),
        ` in four series of five takes ${mixes} mixes at this scatter.`,
      ],
    },
  ];
}
