import Link from 'next/link';
import { hrefWith } from '@/app/_server/list-query';
import { MATERIAL_KINDS, type MaterialKind } from '@/lib/contracts/material-forms';
import { KIND_WORDS } from './words';

export interface KindFilterProps {
  readonly kind: MaterialKind | null;
  readonly text: string;
  readonly archived: string;
}

/** One kind of material, or all. */
export function KindFilter({ kind, text, archived }: KindFilterProps) {
  const choices = [
    { value: '', label: 'all' },
    ...MATERIAL_KINDS.map((value) => ({ value, label: KIND_WORDS[value] })),
  ];
  return (
    <nav aria-label="Kinds of material">
      <ul className="flex flex-wrap gap-1.5">
        {choices.map((choice) => (
          <li key={choice.value}>
            <Link
              href={hrefWith('/stock', { kind: choice.value, q: text, archived })}
              prefetch={false}
              aria-current={choice.value === (kind ?? '') ? 'true' : undefined}
              className="inline-flex min-h-touch items-center rounded-sheet border-2 border-line-strong bg-sheet px-3 text-sm aria-[current=true]:border-ink aria-[current=true]:bg-ink aria-[current=true]:font-semibold aria-[current=true]:text-ink-inverse"
            >
              {choice.label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
