import 'server-only';
import type { z } from 'zod';
import type { Refusal } from '@/app/_commands/command-result';
import type { FormState } from '@/app/_ui/form-state';

export type FormReading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly state: FormState };

const NOTHING_SAVED = 'Nothing was saved yet: look at the marked fields.';

/**
 * Reads a form through its contract. Fields named `anchors.2.name` become lists of things; a name that ends in `[]`
 * may occur many times. Everything that is wrong comes back at once, each beside its field, with what was typed.
 */
export function readForm<T>(schema: z.ZodType<T>, data: FormData): FormReading<T> {
  const parsed = schema.safeParse(nested(data));
  if (parsed.success) return { ok: true, value: parsed.data };
  const fieldErrors: Record<string, string> = {};
  const general: string[] = [];
  for (const issue of parsed.error.issues) {
    const name = issue.path.map(String).join('.');
    if (name === '') general.push(issue.message);
    else fieldErrors[name] ??= issue.message;
  }
  return { ok: false, state: refused(data, { fieldErrors, message: general.join(' ') || NOTHING_SAVED }) };
}

/** The answer to a form that was refused, with what was typed. */
export function refused(
  data: FormData,
  answer: { readonly message?: string; readonly fieldErrors?: Readonly<Record<string, string>> },
): FormState {
  return {
    status: 'refused',
    message: answer.message ?? NOTHING_SAVED,
    fieldErrors: answer.fieldErrors ?? {},
    values: typedValues(data),
  };
}

/** The answer to a form that a command refused. */
export function refusedBy(data: FormData, refusal: Refusal<string>): FormState {
  const { message, field } = refusal;
  return refused(data, field === undefined ? { message } : { fieldErrors: { [field]: message } });
}

/** The answer to a form that was done. */
export function done(message: string): FormState {
  return { status: 'done', message };
}

function typedValues(data: FormData): Record<string, string> {
  return Object.fromEntries(ownFields(data));
}

/** Fields of ours, without those that the framework puts into every form of a server action. */
function ownFields(data: FormData): [string, string][] {
  return [...data.entries()].flatMap(([name, value]): [string, string][] =>
    typeof value === 'string' && !name.startsWith('$') ? [[name, value]] : [],
  );
}

type Tree = Map<string, string | string[] | Tree>;

function nested(data: FormData): unknown {
  const root: Tree = new Map();
  for (const [name, value] of ownFields(data)) put(root, name, value);
  return plain(root);
}

function put(root: Tree, name: string, value: string): void {
  const steps = name.split('.');
  const last = steps.pop() ?? '';
  let tree = root;
  for (const step of steps) {
    const next = tree.get(step);
    const branch: Tree = next instanceof Map ? next : new Map();
    tree.set(step, branch);
    tree = branch;
  }
  if (!last.endsWith('[]')) {
    tree.set(last, value);
    return;
  }
  const key = last.slice(0, -2);
  const before = tree.get(key);
  tree.set(key, [...(Array.isArray(before) ? before : []), value]);
}

/** A branch whose names are all numbers is a list, in the order of the numbers. */
function plain(tree: Tree): unknown {
  const entries = [...tree].map(([key, value]): [string, unknown] => [
    key,
    value instanceof Map ? plain(value) : value,
  ]);
  if (entries.length === 0 || !entries.every(([key]) => /^\d{1,4}$/.test(key))) return Object.fromEntries(entries);
  return entries.sort(([a], [b]) => Number(a) - Number(b)).map(([, value]) => value);
}
