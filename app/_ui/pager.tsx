import { ButtonLink } from './button-link';

export interface PagerProps {
  /** From 1. */
  readonly page: number;
  readonly pageCount: number;
  readonly total: number;
  /** What is counted, in the plural: "lots". */
  readonly things: string;
  readonly hrefOf: (page: number) => string;
}

/** Steps through a long list that the server cuts into pages. Shows nothing when one page holds all. */
export function Pager({ page, pageCount, total, things, hrefOf }: PagerProps) {
  if (pageCount <= 1) return null;
  return (
    <nav aria-label={`Pages of ${things}`} className="flex flex-wrap items-center gap-4">
      {page > 1 && <ButtonLink href={hrefOf(page - 1)}>Previous</ButtonLink>}
      <span className="text-ink-soft">
        Page {page} of {pageCount}, {total} {things}
      </span>
      {page < pageCount && <ButtonLink href={hrefOf(page + 1)}>Next</ButtonLink>}
    </nav>
  );
}
