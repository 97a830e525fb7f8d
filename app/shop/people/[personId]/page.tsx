import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { TextField } from '@/app/_ui/field';
import { Card, Page, Section } from '@/app/_ui/page';
import { StatusMark } from '@/app/_ui/status-mark';
import { SubmitButton } from '@/app/_ui/submit-button';
import { ExceptionList } from '@/app/shop/_components/exception-list';
import { groupedByHours } from '@/app/shop/_components/hours-text';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { findPerson, listBenchExceptions, listPeopleWithSkills } from '@/prisma/data/people';
import { BenchHoursForm } from './_components/bench-hours-form';
import {
  addExceptionAction,
  renamePersonAction,
  saveBenchHoursAction,
  saveSkillsAction,
  setActiveAction,
} from './actions';

export const metadata: Metadata = { title: 'Person' };

interface PersonPageProps {
  readonly params: Promise<{ personId: string }>;
}

export default async function PersonPage({ params }: PersonPageProps) {
  const { personId } = await params;
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const today = wallTimeAt(now(), shop.timeZone).day;
  const [person, exceptions] = await Promise.all([
    findPerson(database, personId),
    listBenchExceptions(database, personId, today),
  ]);
  if (person === null) notFound();
  const skills = (await listPeopleWithSkills(database)).find(({ id }) => id === personId)?.skills ?? [];
  return (
    <Page title={person.name} up={{ href: '/shop', label: 'Shop' }}>
      <Section title="Bench hours" lead={`When ${person.name} can attend in a usual week, by the clock on the wall.`}>
        <BenchHoursForm
          action={saveBenchHoursAction.bind(null, personId)}
          stretches={groupedByHours(person.benchHours)}
        />
      </Section>
      <Section title="Days that differ">
        <ExceptionList exceptions={exceptions} today={today} action={addExceptionAction.bind(null, personId)} />
      </Section>
      <div className="grid gap-8 md:grid-cols-2">
        <Section title="Skills">
          <Card>
            <ActionForm action={saveSkillsAction.bind(null, personId)}>
              <TextField
                name="skills"
                label="Can do"
                hint="Words between commas, such as painting, wire. Steps may ask for one."
                maxLength={400}
                isOptional
                defaultValue={skills.join(', ')}
              />
              <div>
                <SubmitButton>Save the skills</SubmitButton>
              </div>
            </ActionForm>
          </Card>
        </Section>
        <Section title="Name">
          <Card>
            <ActionForm action={renamePersonAction.bind(null, personId)}>
              <TextField
                name="name"
                label="Name in the log"
                hint="Changes in everything logged before, too."
                maxLength={60}
                defaultValue={person.name}
              />
              <div>
                <SubmitButton>Save the name</SubmitButton>
              </div>
            </ActionForm>
          </Card>
        </Section>
        <Section title="Working here">
          <Card>
            <ActionForm action={setActiveAction.bind(null, personId, !person.isActive)}>
              <p>
                {person.isActive ? (
                  <StatusMark status="ready">Works here</StatusMark>
                ) : (
                  <StatusMark status="archived">Left</StatusMark>
                )}
              </p>
              <p className="text-ink-soft">
                Who leaves is no longer offered at the bench. Everything they logged stays in their name.
              </p>
              <div>
                <SubmitButton weight="plain">{person.isActive ? 'Leaves the shop' : 'Is back'}</SubmitButton>
              </div>
            </ActionForm>
          </Card>
        </Section>
      </div>
    </Page>
  );
}
