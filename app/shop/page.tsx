import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { Card, Page, Section } from '@/app/_ui/page';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { listBenchExceptions, listPeopleWithHours } from '@/prisma/data/people';
import { AboutShop } from './_components/about-shop';
import { ExceptionList } from './_components/exception-list';
import { PeopleList } from './_components/people-list';
import { RemoveDemo } from './_components/remove-demo';
import { SettingsForm } from './_components/settings-form';
import { addShopExceptionAction } from './actions';

export const metadata: Metadata = { title: 'Shop' };

export default async function ShopPage() {
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const today = wallTimeAt(now(), shop.timeZone).day;
  const [people, exceptions] = await Promise.all([
    listPeopleWithHours(database),
    listBenchExceptions(database, null, today),
  ]);
  return (
    <Page
      title={shop.name}
      lead="Who works here and when, how warm it is, and in which units you think."
      actions={
        <>
          <ButtonLink href="/shop/temperature">Temperature</ButtonLink>
          <ButtonLink href="/shop/places">Places</ButtonLink>
          <ButtonLink href="/shop/access">Access</ButtonLink>
        </>
      }
    >
      <Section title="People" lead="What is logged at the bench is logged in somebody's name.">
        <PeopleList people={people} />
      </Section>
      <Section
        title="Days that differ for everybody"
        lead="Whoever would be there is there only while the shop is open. Hours that it opens beside that are everybody’s. A day of a person’s own goes before both."
      >
        <ExceptionList exceptions={exceptions} today={today} action={addShopExceptionAction} isShop />
      </Section>
      <Section title="Workshop">
        <Card>
          <SettingsForm shop={shop} />
        </Card>
      </Section>
      {shop.demoLoadedAt !== null && (
        <Section title="Demo workshop">
          <RemoveDemo />
        </Section>
      )}
      <Section title="About and cautions">
        <AboutShop />
      </Section>
    </Page>
  );
}
