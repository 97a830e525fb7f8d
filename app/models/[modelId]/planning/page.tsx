import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { ActionForm } from '@/app/_ui/action-form';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import { db } from '@/prisma/client';
import { findModel } from '@/prisma/data/models';
import { listOperationPlanning } from '@/prisma/data/operation-planning';
import { listPeopleWithSkills } from '@/prisma/data/people';
import { listResources } from '@/prisma/data/resources';
import { findRevision } from '@/prisma/data/revisions';
import { PlanningFields } from './_components/planning-fields';
import { savePlanningAction } from './actions';

export const metadata: Metadata = { title: 'Planning' };

interface PlanningPageProps {
  readonly params: Promise<{ modelId: string }>;
  readonly searchParams: SearchParams;
}

/** What the plan knows of a revision's steps. It may be changed when the revision is frozen, too. */
export default async function PlanningPage({ params, searchParams }: PlanningPageProps) {
  const [{ modelId }, { word }, database] = await Promise.all([params, readListQuery(searchParams), db()]);
  const model = await findModel(database, modelId);
  const wanted = word('revision');
  const head = model?.revisions.find((revision) => revision.letter === wanted) ?? model?.revisions[0];
  const revision = head === undefined ? null : await findRevision(database, head.id);
  if (model === null || revision === null) notFound();
  const [planning, people, resources] = await Promise.all([
    listOperationPlanning(database, [revision.id]),
    listPeopleWithSkills(database),
    listResources(database),
  ]);
  const said = [...planning.values()].flatMap(({ skill }) => (skill === null ? [] : [skill]));
  const skills = [...new Set([...people.flatMap((person) => person.skills), ...said])].sort();
  const by = [
    { value: 'anyone', label: 'anyone' },
    ...skills.map((skill) => ({ value: `skill:${skill}`, label: skill, group: 'Who has the skill' })),
    ...people.map(({ id, name }) => ({ value: `person:${id}`, label: name, group: 'One person' })),
  ];
  return (
    <Page
      title={`Planning of ${model.name}, revision ${revision.letter}`}
      lead="What the plan needs beside the minutes a piece: set-up, who, and which places a step takes. Nothing of what is made depends on it, so a frozen revision may have it changed."
      up={{ href: `/models/${modelId}?revision=${revision.letter}`, label: model.name }}
    >
      {revision.operations.length === 0 ? (
        <EmptyState title="No steps yet">
          <p>Give the revision its route first.</p>
        </EmptyState>
      ) : (
        <ActionForm action={savePlanningAction.bind(null, revision.id)}>
          {revision.operations.map((operation, index) => (
            <PlanningFields
              key={operation.id}
              operation={operation}
              path={`operations.${index}`}
              planning={planning.get(operation.id)}
              people={by}
              resources={resources.map(({ id, name }) => ({ value: id, label: name }))}
            />
          ))}
          <div>
            <SubmitButton>Save the planning</SubmitButton>
          </div>
        </ActionForm>
      )}
    </Page>
  );
}
