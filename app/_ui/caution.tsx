import type { CautionTopic } from '@/lib/contracts/caution-topic';
import { CAUTION_PRECEDENCE, CAUTION_WORDS } from './caution-words';

export interface CautionProps {
  readonly topic: CautionTopic;
  /** Where the page says once for all of them what takes precedence. */
  readonly isBrief?: boolean;
}

/** The usual caution at a step where work can hurt. Shows nothing where there is none. */
export function Caution({ topic, isBrief = false }: CautionProps) {
  if (topic === 'none') return null;
  const words = CAUTION_WORDS[topic];
  return (
    <aside aria-label={`Caution: ${words.title}`} className="flex gap-3 rounded-sheet border-2 border-line-strong p-3">
      <svg viewBox="0 0 24 24" aria-hidden="true" className="mt-0.5 size-6 shrink-0 fill-none stroke-current stroke-2">
        <path d="M3 12C3 7 7 3 12 3s9 4 9 9-4 9-9 9-9-4-9-9Z" />
        <path d="M12 7.5v6M12 15.5v2" />
      </svg>
      <p className="text-sm">
        <strong>{words.title}.</strong> {words.text}
        {!isBrief && <span className="text-ink-soft"> {CAUTION_PRECEDENCE}</span>}
      </p>
    </aside>
  );
}
