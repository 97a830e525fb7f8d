import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { now } from '@/app/_server/clock';
import { currentShop } from '@/app/_server/shop';
import { EmptyState } from '@/app/_ui/empty-state';
import { Card, Page, Section } from '@/app/_ui/page';
import { db } from '@/prisma/client';
import { listAccessTokens } from '@/prisma/data/access-tokens';
import { listSensors } from '@/prisma/data/sensors';
import { PostExample } from './_components/post-example';
import { TokenForm } from './_components/token-form';
import { TokenTable } from './_components/token-table';

export const metadata: Metadata = { title: 'Access' };

export default async function AccessPage() {
  const [shop, database, requestHeaders] = await Promise.all([currentShop(), db(), headers()]);
  const [tokens, sensors] = await Promise.all([listAccessTokens(database), listSensors(database)]);
  const host = requestHeaders.get('host') ?? 'localhost:3000';
  return (
    <Page
      title="Access for loggers, scripts and calendars"
      lead="A token lets a device write, or a calendar read, without a person, one thing only. Whoever has it can do that thing: keep it like a key."
      up={{ href: '/shop', label: 'Shop' }}
    >
      <Section title="Tokens">
        {tokens.length === 0 ? (
          <EmptyState title="No tokens yet">
            <p>
              Make one for each logger that can post by itself. When a logger is lost or sold, revoke its token, and no
              other device is touched.
            </p>
          </EmptyState>
        ) : (
          <TokenTable tokens={tokens} zone={shop.timeZone} nowAt={now()} />
        )}
      </Section>
      <Section title="New token">
        <Card className="max-w-3xl">
          <TokenForm sensors={sensors} />
        </Card>
      </Section>
      <Section title="How a logger posts">
        <PostExample origin={`http://${host}`} />
      </Section>
      <Section title="How a calendar subscribes">
        <p className="max-w-3xl">
          Make a token that may read the calendar, and put the address it gives into your calendar as a subscription. It
          then shows releases at the latest hour they may come, recoat windows with alarms, and planned glue-ups, and
          follows when they move. Many calendars ask only a few times a day and leave out alarms of subscriptions: look
          at the Bench before you act. It carries no order notes. Revoke the token to end it.
        </p>
      </Section>
    </Page>
  );
}
