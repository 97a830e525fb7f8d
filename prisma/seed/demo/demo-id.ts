const PREFIX = 'demo-';

/**
 * Ids of everything the demo workshop brings begin alike, so that all of it can be found again and removed. Ids made
 * by the database or by a device never look like that.
 */
export function demoId(name: string): string {
  return PREFIX + name;
}

/** For a query: the rows the demo workshop brought. */
export const BROUGHT_BY_DEMO = { startsWith: PREFIX } as const;

export const DEMO_SENSOR_ID = demoId('sensor');

/** What the shop is called until somebody gives it a name. */
export const DEMO_SHOP_NAME = 'Demo workshop';
