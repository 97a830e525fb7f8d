import { createHash } from 'node:crypto';
import { publishCalendar } from '@/app/_commands/publish-calendar';
import { checkTokenText } from '@/app/_server/access-token';
import { currentCalendar } from '@/app/_server/calendar';
import { now } from '@/app/_server/clock';
import { calendarText } from '@/lib/exchange/calendar/calendar-text';
import { db } from '@/prisma/client';
import { getShop } from '@/prisma/data/shop';

/**
 * The shop's calendar for subscribers: releases, recoat windows with alarms, planned glue-ups. The address is the key,
 * since calendars send no other: it is made in Shop, Access, and can be revoked there. 404 for every wrong one.
 * An answer that would be the same as the one a subscriber has is 304.
 */
export async function GET(request: Request, { params }: { params: Promise<{ token: string }> }): Promise<Response> {
  const nowAt = now();
  const database = await db();
  const token = (await params).token.replace(/\.ics$/, '');
  const check = await checkTokenText(database, token, 'calendar:read', nowAt);
  if (!check.ok) {
    const message = 'There is no calendar at this address, or it was revoked. Make a new address in Shop, Access.\n';
    return new Response(message, { status: 404, headers: { 'cache-control': 'no-store' } });
  }
  const shop = await getShop(database);
  const entries = await publishCalendar(database, await currentCalendar(database, shop, nowAt), nowAt);
  const text = calendarText(shop.name, entries);
  const etag = `"${createHash('sha256').update(text).digest('base64url')}"`;
  const headers = { etag, 'cache-control': 'private, no-cache' };
  if (request.headers.get('if-none-match') === etag) return new Response(null, { status: 304, headers });
  return new Response(text, { headers: { ...headers, 'content-type': 'text/calendar; charset=utf-8' } });
}
