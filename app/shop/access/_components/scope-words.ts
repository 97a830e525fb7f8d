import type { TokenScope } from '@/lib/contracts/access-token';

/** What a token may do, in words. */
export const SCOPE_WORDS: { readonly [S in TokenScope]: string } = {
  'readings:write': 'write readings',
  'events:write': 'log events of batches',
  'calendar:read': 'read the calendar',
};
