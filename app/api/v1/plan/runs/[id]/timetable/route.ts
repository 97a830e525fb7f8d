import { findPlanRun } from '@/app/_server/plan-runs';

/** The best plan of a search so far, as the planner's thread wrote it; 404: none yet, or the search is not kept. */
export async function GET(_: Request, { params }: RouteContext<'/api/v1/plan/runs/[id]/timetable'>): Promise<Response> {
  const plan = findPlanRun((await params).id)?.plan ?? null;
  const headers = { 'cache-control': 'no-store', 'content-type': 'application/json; charset=utf-8' };
  return plan === null ? new Response('null', { status: 404, headers }) : new Response(plan.timetableJson, { headers });
}
