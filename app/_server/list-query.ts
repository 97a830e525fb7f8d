import 'server-only';

/** How Next hands over what stands after the question mark. */
export type SearchParams = Promise<Readonly<Record<string, string | string[] | undefined>>>;

export interface ListQuery {
  readonly text: string;
  /** From 1. */
  readonly page: number;
  readonly isArchived: boolean;
  /** Any other word of the address; empty when it is not there. */
  readonly word: (name: string) => string;
}

/** Lines on one page of a long list. */
export const PAGE_SIZE = 50;

/** Reads the search, the page and the choices of a list from its address; nonsense counts as not there. */
export async function readListQuery(searchParams: SearchParams): Promise<ListQuery> {
  const params = await searchParams;
  const word = (name: string) => {
    const value = params[name];
    return (typeof value === 'string' ? value : '').replaceAll('\u0000', '').trim().slice(0, 80);
  };
  const page = /^\d{1,6}$/.test(word('page')) ? Math.max(1, Number(word('page'))) : 1;
  return { text: word('q'), page, isArchived: word('archived') === '1', word };
}

/** An address with those words after the question mark that are not empty. */
export function hrefWith(path: string, words: Readonly<Record<string, string>>): string {
  const query = new URLSearchParams(Object.entries(words).filter(([, value]) => value !== ''));
  return query.size === 0 ? path : `${path}?${query}`;
}
