/** How far something is, as a bar and in words; without a share it only says that it goes on. */
export function ProgressBar({ label, share }: { readonly label: string; readonly share: number | null }) {
  const percent = share === null ? null : Math.floor(share * 100);
  return (
    <div className="grid gap-2">
      <p className="flex flex-wrap justify-between gap-x-4 font-medium">
        <span className="min-w-0 break-words">{label}</span>
        {percent !== null && <span>{percent} %</span>}
      </p>
      <progress
        aria-label={label}
        {...(percent === null ? {} : { value: percent })}
        max={100}
        className="h-3 w-full appearance-none overflow-hidden rounded-sheet border-2 border-line-strong bg-sheet [&::-moz-progress-bar]:bg-ink [&::-webkit-progress-bar]:bg-sheet [&::-webkit-progress-value]:bg-ink"
      />
    </div>
  );
}
