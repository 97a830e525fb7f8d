import { ButtonLink } from '../_ui/button-link';
import { EmptyState } from '../_ui/empty-state';

/** The Bench without an open batch: what it is for and how work gets onto it. */
export function FirstSteps() {
  return (
    <EmptyState
      title="No batch is open"
      action={
        <div className="flex flex-wrap gap-3">
          <ButtonLink href="/batches/new" weight="primary">
            Open a batch
          </ButtonLink>
          <ButtonLink href="/models">Look at the models</ButtonLink>
        </div>
      }
    >
      <p>
        The Bench shows what can be done now: which mixes are running and how long they can be used, which pieces may be
        sanded, coated, painted, pulled or shipped, and which must wait and until when.
      </p>
      <p>
        Open a batch of a model to begin. Every mix, joint and coat you record here starts a clock that follows the
        temperature of your shop.
      </p>
    </EmptyState>
  );
}
