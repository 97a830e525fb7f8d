import { findPlanRun } from '@/app/_server/plan-runs';

/** How far a search for a plan is. What it found is under `timetable`, anew with each version. */
export async function GET(_: Request, { params }: RouteContext<'/api/v1/plan/runs/[id]'>): Promise<Response> {
  const run = findPlanRun((await params).id);
  const headers = { 'cache-control': 'no-store' };
  if (run === null) return Response.json({ status: 'gone' }, { status: 404, headers });
  const { status, plansMade, version, message, isHarder, harder } = run;
  return Response.json({ status, plansMade, version, message, isHarder, harder }, { headers });
}
