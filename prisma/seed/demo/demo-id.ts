const PREFIX = 'demo-';

/** Ids of everything the demo workshop brings begin alike, so that all of it can be found again and removed. */
export function demoId(name: string): string {
  return PREFIX + name;
}

/** Whether a row was brought by the demo workshop. Ids made by the database or by a device never look like that. */
export function isDemoId(id: string): boolean {
  return id.startsWith(PREFIX);
}

/** For a query: the rows the demo workshop brought. */
export const BROUGHT_BY_DEMO = { startsWith: PREFIX } as const;

export const DEMO_SENSOR_ID = demoId('sensor');
