import type { Metadata } from 'next';
import Link from 'next/link';
import { ActionForm } from '@/app/_ui/action-form';
import { EmptyState } from '@/app/_ui/empty-state';
import { Card, Page, Section } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import { Table } from '@/app/_ui/table';
import { spanText } from '@/app/shop/_components/hours-text';
import { db } from '@/prisma/client';
import { listResources, type ShopResource } from '@/prisma/data/resources';
import { PLACE_WORDS } from './_components/kind-words';
import { PlaceFields } from './_components/place-fields';
import { saveResourceAction } from './actions';

export const metadata: Metadata = { title: 'Places' };

export default async function PlacesPage() {
  const resources = await listResources(await db());
  return (
    <Page
      title="Places"
      lead="Rotators, racks, clamps, a booth: what holds pieces while they cure. The plan never fills them beyond their number."
      up={{ href: '/shop', label: 'Shop' }}
    >
      <Section title="In the shop">
        {resources.length === 0 ? (
          <EmptyState title="No places yet">
            <p>
              Add what runs full: the rotator that turns two dozen pieces, the rack, the clamps. Then say in a model’s
              planning which step takes places, and until when. A rack slot counts as free as soon as the cure is far
              enough; unloading is part of the next visit.
            </p>
          </EmptyState>
        ) : (
          <Table
            caption="Places"
            rows={resources}
            rowKey={(resource) => resource.id}
            columns={[
              {
                id: 'name',
                title: 'Name',
                cell: (resource) => (
                  <Link
                    href={`/shop/places/${resource.id}`}
                    prefetch={false}
                    className="inline-flex min-h-touch items-center underline underline-offset-4"
                  >
                    {resource.name}
                  </Link>
                ),
              },
              { id: 'kind', title: 'Is', cell: (resource) => PLACE_WORDS[resource.kind] },
              { id: 'places', title: 'Places', isNumber: true, cell: (resource) => resource.capacity },
              { id: 'hours', title: 'Usable', cell: usableText },
            ]}
          />
        )}
      </Section>
      <Section title="Add places">
        <Card className="max-w-3xl">
          <ActionForm action={saveResourceAction.bind(null, null)} clearsWhenDone>
            <PlaceFields />
            <div>
              <SubmitButton pendingText="Adding…">Add them</SubmitButton>
            </div>
          </ActionForm>
        </Card>
      </Section>
    </Page>
  );
}

function usableText({ openFromMinute, openToMinute }: ShopResource): string {
  return openFromMinute === null || openToMinute === null ? 'around the clock' : spanText(openFromMinute, openToMinute);
}
