import type { Metadata } from 'next';
import { ButtonLink } from './_ui/button-link';

export const metadata: Metadata = { title: 'Not found' };

export default function NotFound() {
  return (
    <div className="mx-auto grid max-w-2xl justify-items-start gap-4 px-4 py-12">
      <h1 className="text-3xl font-bold">There is nothing at this address</h1>
      <p className="text-ink-soft">
        It may have been removed, or the address has a slip in it. Frozen revisions, batches and their history are never
        removed.
      </p>
      <ButtonLink href="/" weight="primary">
        To the Bench
      </ButtonLink>
    </div>
  );
}
