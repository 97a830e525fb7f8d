/** The screens, in the order of a workshop's day. */
export const SCREENS = [
  { href: '/', label: 'Bench' },
  { href: '/batches', label: 'Batches' },
  { href: '/plan', label: 'Plan' },
  { href: '/models', label: 'Models' },
  { href: '/pull-tests', label: 'Pull tests' },
  { href: '/stock', label: 'Stock' },
  { href: '/rules', label: 'Rules' },
  { href: '/shop', label: 'Shop' },
] as const;
export type ScreenHref = (typeof SCREENS)[number]['href'];

/** Those a phone keeps at the thumb; the others are one touch further. */
export const AT_THE_THUMB: ReadonlySet<ScreenHref> = new Set<ScreenHref>(['/', '/batches', '/plan', '/stock']);
