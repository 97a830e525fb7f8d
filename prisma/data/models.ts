import { compareRevisionLetters } from '@/lib/spec/revision-letter';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { chunked } from '@/prisma/data/batches';

/** A revision as the list of a model shows it. */
export interface RevisionHead {
  readonly id: string;
  readonly letter: string;
  /** Null while it is a draft. */
  readonly frozenAt: Instant | null;
  readonly createdAt: Instant;
  readonly updatedAt: Instant;
  readonly batchCount: number;
}

export interface Model {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  readonly isArchived: boolean;
  /** Newest first; a model has at least one. */
  readonly revisions: readonly RevisionHead[];
}

/** A line of the list of models. */
export interface ModelLine {
  readonly id: string;
  readonly name: string;
  readonly isArchived: boolean;
  readonly letter: string;
  readonly isFrozen: boolean;
  readonly woodName: string | null;
  readonly lengthMm: number;
  readonly anchorCount: number;
  readonly openBatchCount: number;
}

export interface ModelSearch {
  /** A part of a model's name in whatever case; empty: all. */
  readonly text: string;
  readonly isArchived: boolean;
  /** From 0. */
  readonly page: number;
  readonly pageSize: number;
}

/** One page of models by name, with their newest revisions, and how many there are in all. */
export async function listModelPage(
  reader: DbReader,
  { text, isArchived, page, pageSize }: ModelSearch,
): Promise<{ lines: ModelLine[]; total: number }> {
  const folded = text.toLocaleLowerCase('en');
  const names = await reader.model.findMany({ where: { isArchived }, select: { id: true, name: true } });
  const found = names
    .filter((model) => model.name.toLocaleLowerCase('en').includes(folded))
    .sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
  const ids = found.slice(page * pageSize, (page + 1) * pageSize).map((model) => model.id);
  const lines = await modelLines(reader, ids);
  return { lines: ids.flatMap((id) => lines.get(id) ?? []), total: found.length };
}

async function modelLines(reader: DbReader, ids: readonly string[]): Promise<Map<string, ModelLine>> {
  const lines = new Map<string, ModelLine>();
  for (const part of chunked(ids)) {
    const models = await reader.model.findMany({
      where: { id: { in: part } },
      select: {
        id: true,
        name: true,
        isArchived: true,
        revisions: {
          select: {
            letter: true,
            frozenAt: true,
            lengthMm: true,
            wood: { select: { name: true } },
            _count: { select: { anchors: true, batches: { where: { status: 'open' } } } },
          },
        },
      },
    });
    for (const { revisions, ...model } of models) {
      const newest = revisions.toSorted((a, b) => compareRevisionLetters(b.letter, a.letter))[0];
      if (newest === undefined) continue;
      lines.set(model.id, {
        ...model,
        letter: newest.letter,
        isFrozen: newest.frozenAt !== null,
        woodName: newest.wood?.name ?? null,
        lengthMm: newest.lengthMm,
        anchorCount: newest._count.anchors,
        openBatchCount: revisions.reduce((sum, revision) => sum + revision._count.batches, 0),
      });
    }
  }
  return lines;
}

/** A model with its revisions, or null. */
export async function findModel(reader: DbReader, modelId: string): Promise<Model | null> {
  const row = await reader.model.findUnique({
    where: { id: modelId },
    select: {
      id: true,
      name: true,
      note: true,
      isArchived: true,
      revisions: {
        select: {
          id: true,
          letter: true,
          frozenAt: true,
          createdAt: true,
          updatedAt: true,
          _count: { select: { batches: true } },
        },
      },
    },
  });
  if (row === null) return null;
  const revisions = row.revisions
    .toSorted((a, b) => compareRevisionLetters(b.letter, a.letter))
    .map(({ _count, frozenAt, createdAt, updatedAt, ...revision }) => ({
      ...revision,
      frozenAt: frozenAt?.getTime() ?? null,
      createdAt: createdAt.getTime(),
      updatedAt: updatedAt.getTime(),
      batchCount: _count.batches,
    }));
  return { ...row, revisions };
}

/** Whether another model than `exceptId` has this name, in whatever case. */
export async function isModelNameTaken(reader: DbReader, name: string, exceptId: string | null): Promise<boolean> {
  const folded = name.toLocaleLowerCase('en');
  const models = await reader.model.findMany({ select: { id: true, name: true } });
  return models.some((model) => model.id !== exceptId && model.name.toLocaleLowerCase('en') === folded);
}
