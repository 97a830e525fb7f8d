import { ActionForm } from '@/app/_ui/action-form';
import { DialogButton } from '@/app/_ui/dialog-button';
import { SubmitButton } from '@/app/_ui/submit-button';
import { removeDemoAction } from '../remove-demo-action';

/** Says what the demo is, and takes it out after one look at what that means. */
export function RemoveDemo() {
  return (
    <div className="grid gap-4">
      <p className="max-w-3xl">
        People, models, glues, batches and two weeks of temperature in here were invented, so that every screen has
        something to show. Never mix a real product by their figures.
      </p>
      <div>
        <DialogButton label="Remove the demo workshop" title="Remove the demo workshop?">
          <p>
            Its batches go with everything that was logged on them. What you added yourself stays: your batches, models,
            materials, lots, people and readings, and whatever of the demo they use. It cannot be undone.
          </p>
          <ActionForm action={removeDemoAction}>
            <div>
              <SubmitButton pendingText="Removing…">Remove it</SubmitButton>
            </div>
          </ActionForm>
        </DialogButton>
      </div>
    </div>
  );
}
