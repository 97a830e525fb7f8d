import type { Theme } from '@/app/_server/device';
import { chooseTheme } from '@/app/_server/device-actions';

const CHOICES = [
  { value: '', label: 'As the device' },
  { value: 'light', label: 'Paper' },
  { value: 'dark', label: 'Deep water' },
] as const;

/** Paper, deep water, or as the device says. Three plain buttons, no script. */
export function ThemeChoice({ theme }: { readonly theme: Theme | null }) {
  return (
    <form action={chooseTheme}>
      <fieldset className="flex flex-wrap items-center gap-x-1">
        <legend className="float-left pr-2 text-ink-soft">Look</legend>
        {CHOICES.map((choice) => (
          <button
            key={choice.value}
            type="submit"
            name="theme"
            value={choice.value}
            aria-pressed={(theme ?? '') === choice.value}
            className="min-h-touch px-2 sm:px-3 underline-offset-4 hover:underline aria-pressed:font-bold aria-pressed:underline aria-pressed:decoration-accent aria-pressed:decoration-2"
          >
            {choice.label}
          </button>
        ))}
      </fieldset>
    </form>
  );
}
