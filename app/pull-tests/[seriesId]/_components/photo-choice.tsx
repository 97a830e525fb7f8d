'use client';

import { useRouter } from 'next/navigation';
import { useId, useState } from 'react';
import { inputClass } from '@/app/_ui/input-class';

/** A photo of how the specimen looks after the pull. It is sent as soon as it is chosen. */
export function PhotoChoice({ pullId, hasPhoto }: { readonly pullId: string; readonly hasPhoto: boolean }) {
  const id = useId();
  const router = useRouter();
  const [said, setSaid] = useState('');

  async function send(file: File | undefined) {
    if (file === undefined) return;
    setSaid('Sending…');
    try {
      const response = await fetch(`/api/v1/pulls/${pullId}/photo`, { method: 'POST', body: file });
      const { message }: { readonly message: string } = await response.json();
      setSaid(message);
      if (response.ok) router.refresh();
    } catch {
      setSaid('The server did not answer. Try again.');
    }
  }

  return (
    <div className="grid max-w-md gap-1.5">
      <label htmlFor={id} className="font-semibold">
        {hasPhoto ? 'Another photo' : 'Photo'} <span className="font-normal text-ink-soft">(optional)</span>
      </label>
      <input
        id={id}
        type="file"
        accept="image/jpeg,image/png,image/webp"
        onChange={(event) => void send(event.currentTarget.files?.[0])}
        className={inputClass}
      />
      <p role="status" className="text-sm text-ink-soft">
        {said}
      </p>
    </div>
  );
}
