import { ActionForm } from '@/app/_ui/action-form';
import type { FormAction } from '@/app/_ui/form-state';
import { SubmitButton } from '@/app/_ui/submit-button';

export interface TickButtonProps {
  readonly action: FormAction;
  readonly preparationId: string;
  readonly item: string;
  /** What is ticked off, for those who only hear the page. */
  readonly label: string;
  readonly word: string;
  readonly isDone: boolean;
}

/** Ticks one line off; pressed again it is open again. What was acknowledged is stored. */
export function TickButton({ action, preparationId, item, label, word, isDone }: TickButtonProps) {
  return (
    <ActionForm action={action} className="grid gap-2 print:hidden">
      <input type="hidden" name="preparationId" value={preparationId} />
      <input type="hidden" name="item" value={item} />
      <input type="hidden" name="isDone" value={isDone ? 'no' : 'yes'} />
      <SubmitButton weight={isDone ? 'quiet' : 'plain'} label={isDone ? `Take back: ${label}` : label}>
        {isDone ? 'Take back' : word}
      </SubmitButton>
    </ActionForm>
  );
}
