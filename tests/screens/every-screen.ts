import type { Page } from '@playwright/test';

/** Addresses of every kind of screen in a workshop: fixed ones, and the first of each list that is found there. */
export async function everyScreen(page: Page, baseUrl: string): Promise<string[]> {
  const first = async (list: string, pattern: RegExp): Promise<string> => {
    await page.goto(`${baseUrl}${list}`);
    const links = await page
      .locator('main a[href]')
      .evaluateAll((nodes) => nodes.map((node) => node.getAttribute('href')));
    const found = links.find((href) => href !== null && pattern.test(href));
    if (found === undefined || found === null) throw new Error(`${list} links to nothing like ${pattern}`);
    return found;
  };
  const batch = await first('/batches', /^\/batches\/(?!new)[^/?]+$/);
  const model = await first('/models', /^\/models\/(?!new)[^/?]+$/);
  const glue = await first('/stock?kind=adhesive', /^\/stock\/(?!new|lots|shortages|trace|import)[^/?]+$/);
  const lot = await first('/stock/lots', /\/lots\/(?!new)[^/?]+$/);
  const person = await first('/shop', /^\/shop\/people\//);
  const place = await first('/shop/places', /^\/shop\/places\//);
  const sensor = await first('/shop/temperature', /^\/shop\/temperature\/sensors\//);
  const series = await first('/pull-tests', /^\/pull-tests\/(?!new|scales|calibrations|acceptance)[^/?]+$/);
  const specimen = await first(series, /\/specimens\//);
  return [
    '/',
    '/batches',
    '/batches/new',
    batch,
    '/models',
    '/models/new',
    model,
    `${model}/compare`,
    `${model}/planning`,
    '/stock',
    '/stock/new',
    '/stock/lots',
    glue,
    `${glue}/sheet`,
    `${glue}/strength`,
    `${glue}/lots/new`,
    '/pull-tests',
    '/pull-tests/new',
    '/pull-tests/scales',
    '/pull-tests/calibrations',
    series,
    `${series}/analysis`,
    `${series}/accept`,
    `${series}/card`,
    `${series}/report`,
    `${series}/import`,
    specimen,
    lot,
    `${lot}/trace`,
    '/stock/shortages',
    '/stock/trace',
    '/stock/import',
    `${batch}/prepare`,
    `${batch}/used`,
    `${batch}/pieces/1`,
    `${model}/cost`,
    '/rules',
    '/rules/figures',
    '/shop',
    person,
    '/shop/access',
    '/shop/places',
    place,
    '/plan',
    '/plan/print',
    '/shop/temperature',
    sensor,
    '/shop/temperature/import',
    '/no-such-screen',
  ];
}
