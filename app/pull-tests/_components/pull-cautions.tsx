import { CAUTION_PRECEDENCE } from '@/app/_ui/caution-words';
import { type PullStep, pullCautions } from '@/lib/pulltest/pull-cautions';

const TITLES: { readonly [S in PullStep]: string } = {
  making: 'Before you mix and cut',
  'setting-up': 'Before you set up',
  pulling: 'While you pull',
  after: 'After the pull',
};

/** The usual cautions of one step of a pull test, at that step. */
export function PullCautions({ step }: { readonly step: PullStep }) {
  return (
    <aside
      aria-label={`Caution: ${TITLES[step]}`}
      className="flex gap-3 rounded-sheet border-2 border-line-strong p-3 text-sm"
    >
      <svg viewBox="0 0 24 24" aria-hidden="true" className="mt-0.5 size-6 shrink-0 fill-none stroke-current stroke-2">
        <path d="M3 12C3 7 7 3 12 3s9 4 9 9-4 9-9 9-9-4-9-9Z" />
        <path d="M12 7.5v6M12 15.5v2" />
      </svg>
      <div className="grid gap-1">
        <p className="font-bold">{TITLES[step]}</p>
        <ul className="list-disc pl-5">
          {pullCautions(step).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <p className="text-ink-soft">{CAUTION_PRECEDENCE}</p>
      </div>
    </aside>
  );
}
