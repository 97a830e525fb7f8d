import 'server-only';

/**
 * Whether a request that writes was made by a page of this app and not by a page of some other site in the same
 * browser. Browsers state it in Sec-Fetch-Site where the connection counts as secure, and in Origin always;
 * a caller that sends neither is no browser and must show a token.
 */
export function isFromOwnPage(headers: Headers): boolean {
  const site = headers.get('sec-fetch-site');
  if (site !== null && site !== 'same-origin') return false;
  const origin = headers.get('origin');
  if (origin === null) return false;
  const host = headers.get('x-forwarded-host') ?? headers.get('host');
  return URL.canParse(origin) && new URL(origin).host === host;
}
