import type { NextRequest } from 'next/server';
import { NextResponse } from 'next/server';

/**
 * Sets the content security policy with a nonce of its own for every answer, and the other headers that keep a page
 * in its place. Without `upgrade-insecure-requests`: a workshop serves plain http on its own network.
 */
export function proxy(request: NextRequest): NextResponse {
  const nonce = Buffer.from(crypto.randomUUID()).toString('base64');
  const isDevelopment = process.env.NODE_ENV === 'development';
  const policy = [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${isDevelopment ? " 'unsafe-eval'" : ''}`,
    `style-src 'self' ${isDevelopment ? "'unsafe-inline'" : `'nonce-${nonce}'`}`,
    // Charts and drawings place their parts by style attributes; no script can come in that way.
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');

  const headers = new Headers(request.headers);
  headers.set('x-nonce', nonce);
  headers.set('content-security-policy', policy);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set('content-security-policy', policy);
  response.headers.set('x-content-type-options', 'nosniff');
  response.headers.set('referrer-policy', 'same-origin');
  return response;
}

export const config = {
  matcher: [
    {
      // A logger's file goes past here, since what passes is held in memory and cut off at 10 MB. It answers no page.
      source: '/((?!_next/static|_next/image|favicon.ico|api/v1/reading-imports).*)',
      missing: [{ type: 'header', key: 'next-router-prefetch' }],
    },
  ],
};
