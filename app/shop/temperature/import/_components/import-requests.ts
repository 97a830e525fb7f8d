import type { AnswerName, ImportRefusal, ImportView } from '@/app/_import/import-view';

/** Requests of the import page. Every one ends in the job as it stands or in a refusal in words; none throws. */
export type ImportAnswer = { readonly ok: true; readonly view: ImportView } | ImportRefusal;

const BASE = '/api/v1/reading-imports';
const NO_ANSWER =
  'The server did not answer. Look whether it runs and whether this device is on its network, then try again.';

/** Answers as the form has them: text by field. */
export type AnswerTexts = { readonly [Name in AnswerName]?: string };

/** Sends a file; `onSent` is told the share of it that is sent. `hold` gets what stops it. */
export function sendFile(
  file: File,
  onSent: (share: number) => void,
  hold: (stop: () => void) => void,
): Promise<ImportAnswer> {
  return new Promise((resolve) => {
    // fetch cannot tell how far an upload is.
    const request = new XMLHttpRequest();
    request.open('POST', `${BASE}?fileName=${encodeURIComponent(file.name.slice(-200))}`);
    request.upload.onprogress = ({ loaded, total, lengthComputable }) => {
      if (lengthComputable && total > 0) onSent(loaded / total);
    };
    request.onload = () => resolve(answerOf(request.status, request.responseText));
    request.onerror = () => resolve({ ok: false, message: NO_ANSWER });
    request.onabort = () => resolve({ ok: false, message: 'Stopped. Nothing was kept.' });
    hold(() => request.abort());
    request.send(file);
  });
}

export function askJob(id: string): Promise<ImportAnswer> {
  return ask(`${BASE}/${id}`, { cache: 'no-store' });
}

export function sendAnswers(id: string, answers: AnswerTexts): Promise<ImportAnswer> {
  const numbers: readonly string[] = ['temperatureColumn', 'firstYear'];
  const body = Object.entries(answers).map(([name, text]) => [name, numbers.includes(name) ? Number(text) : text]);
  return ask(`${BASE}/${id}/answers`, post(Object.fromEntries(body)));
}

export function confirmImport(id: string, target: object): Promise<ImportAnswer> {
  return ask(`${BASE}/${id}/confirm`, post(target));
}

export function dropImport(id: string): void {
  void fetch(`${BASE}/${id}`, { method: 'DELETE' }).catch(() => {}); // it goes by itself when others come
}

function post(body: object): RequestInit {
  return { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}

async function ask(address: string, init: RequestInit): Promise<ImportAnswer> {
  try {
    const response = await fetch(address, init);
    return answerOf(response.status, await response.text());
  } catch {
    return { ok: false, message: NO_ANSWER };
  }
}

function answerOf(status: number, text: string): ImportAnswer {
  try {
    const body: unknown = JSON.parse(text);
    if (status < 300 && isView(body)) return { ok: true, view: body };
    if (isRefusal(body)) return body;
  } catch {
    // said below
  }
  return { ok: false, message: `The server answered with something else than expected (${status}). Try again.` };
}

function isView(body: unknown): body is ImportView {
  return typeof body === 'object' && body !== null && 'stage' in body && 'id' in body;
}

function isRefusal(body: unknown): body is ImportRefusal {
  return typeof body === 'object' && body !== null && 'message' in body && typeof body.message === 'string';
}
