import { z } from 'zod';
import type { DbReader, Tx } from '@/prisma/client';

export interface PersonName {
  readonly id: string;
  readonly name: string;
}

export interface Person extends PersonName {
  readonly isActive: boolean;
}

/** A stretch of a week in which a person can attend. */
export interface BenchStretch {
  /** ISO 8601: 1 Monday to 7 Sunday. */
  readonly weekday: number;
  readonly fromMinute: number;
  readonly toMinute: number;
}

/**
 * A day that differs; without minutes the person is away or the shop shut, without a person it is the whole shop: then
 * nobody is there outside these hours, or with `opensHours` everybody is there in them too.
 */
export interface BenchException {
  readonly id: string;
  readonly personId: string | null;
  readonly onDate: string;
  readonly fromMinute: number | null;
  readonly toMinute: number | null;
  readonly opensHours: boolean;
  readonly reason: string;
}

const EXCEPTION_COLUMNS = {
  id: true,
  personId: true,
  onDate: true,
  fromMinute: true,
  toMinute: true,
  opensHours: true,
  reason: true,
} as const;

/** People who work in the shop now, by name. */
export async function listActivePeople(reader: DbReader): Promise<PersonName[]> {
  return reader.person.findMany({
    where: { isActive: true },
    select: { id: true, name: true },
    orderBy: { name: 'asc' },
  });
}

/** Everybody, those who left included, with their bench hours, by name. */
export async function listPeopleWithHours(reader: DbReader): Promise<(Person & { benchHours: BenchStretch[] })[]> {
  return reader.person.findMany({
    select: {
      id: true,
      name: true,
      isActive: true,
      benchHours: {
        select: { weekday: true, fromMinute: true, toMinute: true },
        orderBy: [{ weekday: 'asc' }, { fromMinute: 'asc' }],
      },
    },
    orderBy: { name: 'asc' },
  });
}

const skillsSchema = z.array(z.string());

/** Everybody who works in the shop now, with hours and skills, by name. */
export async function listPeopleWithSkills(
  reader: DbReader,
): Promise<(PersonName & { skills: readonly string[]; benchHours: BenchStretch[] })[]> {
  const rows = await reader.person.findMany({
    where: { isActive: true },
    select: {
      id: true,
      name: true,
      skills: true,
      benchHours: {
        select: { weekday: true, fromMinute: true, toMinute: true },
        orderBy: [{ weekday: 'asc' }, { fromMinute: 'asc' }],
      },
    },
    orderBy: { name: 'asc' },
  });
  return rows.map((row) => ({ ...row, skills: skillsSchema.parse(row.skills) }));
}

/** One person with bench hours, or null. */
export async function findPerson(
  reader: DbReader,
  personId: string,
): Promise<(Person & { benchHours: BenchStretch[] }) | null> {
  return reader.person.findUnique({
    where: { id: personId },
    select: {
      id: true,
      name: true,
      isActive: true,
      benchHours: {
        select: { weekday: true, fromMinute: true, toMinute: true },
        orderBy: [{ weekday: 'asc' }, { fromMinute: 'asc' }],
      },
    },
  });
}

/** Days that differ from `fromOn` on: those of one person, or of the whole shop when null. At most 200. */
export async function listBenchExceptions(
  reader: DbReader,
  personId: string | null,
  fromOn: string,
): Promise<BenchException[]> {
  return reader.benchException.findMany({
    where: { personId, onDate: { gte: fromOn } },
    select: EXCEPTION_COLUMNS,
    orderBy: [{ onDate: 'asc' }, { fromMinute: 'asc' }],
    take: 200,
  });
}

/** Days that differ from `fromOn` to `toOn`, of everybody and of the whole shop. */
export async function listAllBenchExceptions(
  reader: DbReader,
  fromOn: string,
  toOn: string,
): Promise<BenchException[]> {
  return reader.benchException.findMany({
    where: { onDate: { gte: fromOn, lte: toOn } },
    select: EXCEPTION_COLUMNS,
    orderBy: [{ onDate: 'asc' }, { fromMinute: 'asc' }],
  });
}

/** Whether a name is taken by anybody, in whatever case, but by the person `exceptId`. */
export async function isPersonNameTaken(tx: Tx, name: string, exceptId: string | null): Promise<boolean> {
  const people = await tx.person.findMany({ select: { id: true, name: true } });
  const folded = name.toLocaleLowerCase('en');
  return people.some((person) => person.id !== exceptId && person.name.toLocaleLowerCase('en') === folded);
}
