import type { ModelLimit } from '@/lib/schedule/constraint-model';
import type { HarderAnswer } from './try-harder';

/** What came of looking harder, in a sentence or two. */
export function harderWords(answer: HarderAnswer): string {
  switch (answer.kind) {
    case 'not-available':
      return 'Trying harder is not available here: the solver that it needs is not installed or does not answer as it should. Everything else works without it.';
    case 'nothing-to-gain':
      return 'There is nothing to try harder for: no batch that may be moved is late, or a step has no place.';
    case 'looked': {
      const found = answer.isBetter ? 'A better plan was found.' : 'Nothing better was found.';
      const { limits } = answer;
      if (!answer.isProved) return `${found} ${answer.seconds} s were spent; a still better one may exist.`;
      if (limits.length === 0) return `${found} No plan is less late than this one: proved.`;
      return `${found} Proved only for plans in which ${limits.map(limitWords).join(', and ')}.`;
    }
  }
}

function limitWords(limit: ModelLimit): string {
  switch (limit) {
    case 'some-batches':
      return 'all but the latest batches stay where they are';
    case 'no-other-work-between':
      return 'work that may be put down is put down only at the end of a session';
    case 'rounded-weights':
      return 'the weights of the batches are rounded';
    case 'pins-in-conflict':
      return 'the pins that clash stay as they are';
  }
}
