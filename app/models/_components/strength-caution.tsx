/** Stands wherever strengths are shown. */
export function StrengthCaution() {
  return (
    <aside aria-label="Caution: estimates" className="flex gap-3 rounded-sheet border-2 border-line-strong p-3">
      <svg viewBox="0 0 24 24" aria-hidden="true" className="mt-0.5 size-6 shrink-0 fill-none stroke-current stroke-2">
        <path d="M3 12C3 7 7 3 12 3s9 4 9 9-4 9-9 9-9-4-9-9Z" />
        <path d="M12 7.5v6M12 15.5v2" />
      </svg>
      <p className="text-sm">
        <strong>Estimates, never a rating.</strong> They are for judging fishing lures against their line, not for
        lifting, climbing, towing or anything people rely on. Pull tests of your own decide.
      </p>
    </aside>
  );
}
