import type { Sentence } from '@/lib/pulltest/pull-words';
import { wordsText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

/** A conclusion in plain words: the answer first and large, then its limits, what to look into, and the rest. */
export function ConclusionWords({
  sentences,
  units,
}: {
  readonly sentences: readonly Sentence[];
  readonly units: UnitChoice;
}) {
  const of = (kind: Sentence['kind']) =>
    sentences.filter((sentence) => sentence.kind === kind).map(({ words }) => wordsText(words, units));
  return (
    <div className="grid max-w-3xl gap-5">
      {of('answer').map((text) => (
        <p key={text} className="border-l-4 border-ink bg-well px-4 py-3 text-lg font-medium">
          {text}
        </p>
      ))}
      <Lines title="What it rests on" texts={of('limit')} />
      <Lines title="Look into this" texts={of('question')} isMarked />
      <Lines title="Also" texts={of('note')} />
    </div>
  );
}

interface LinesProps {
  readonly title: string;
  readonly texts: readonly string[];
  readonly isMarked?: boolean;
}

function Lines({ title, texts, isMarked = false }: LinesProps) {
  if (texts.length === 0) return null;
  return (
    <div className={isMarked ? 'border-l-4 border-accent bg-accent-soft px-4 py-3' : ''}>
      <h3 className="font-bold">{title}</h3>
      <ul className="mt-1 grid list-disc gap-1 pl-5">
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
  );
}
