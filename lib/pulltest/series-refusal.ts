/** Why a series gives no lower value, in the order in which they are asked. */
export const SERIES_REFUSALS = [
  'no-readings',
  'fell-out',
  'too-few-exact',
  'too-many-bounds',
  'fewer-than-3-mixes',
  'mix-of-bounds-only',
  'depth-of-bounds-only',
  'not-connected',
  'too-few-readings',
  'slope-not-positive',
  'scatter-too-wide',
  'did-not-converge',
] as const;
export type SeriesRefusal = (typeof SERIES_REFUSALS)[number];

/** What the refusal means and what to do about it. */
export function seriesRefusalText(refusal: SeriesRefusal): string {
  switch (refusal) {
    case 'no-readings':
      return 'No pull counts yet.';
    case 'fell-out':
      return 'A joint came out by hand. Whatever the others held, no lower value can be stated for joints made like these: find out why, and pull a new series.';
    case 'too-few-exact':
      return 'Fewer than three joints failed themselves. The pulls only say that they held at least so much.';
    case 'too-many-bounds':
      return 'More than half of the pulls stopped before the joint failed. Use a stronger wire or a greater scale, or take each as "at least".';
    case 'fewer-than-3-mixes':
      return 'How much mixes differ cannot be told from fewer than three mixes with two pulls each, and the next lure is glued with another mix. Glue the next specimens with a new mix.';
    case 'mix-of-bounds-only':
      return 'In one mix no joint failed itself, so it cannot be compared with the others. Add pulls of that mix that fail in the joint.';
    case 'depth-of-bounds-only':
      return 'At one depth no joint failed itself. Its strength is only known as "at least".';
    case 'not-connected':
      return 'Depths and mixes cannot be told apart: no mix was used for depths of both groups. Glue every depth with every mix.';
    case 'too-few-readings':
      return 'There are as many unknowns as pulls, so nothing is left to tell the scatter. Add one more mix with every depth.';
    case 'slope-not-positive':
      return 'Deeper shanks did not hold more. Look at how they failed before anything is concluded from depth.';
    case 'scatter-too-wide':
      return 'The loads scatter so widely that a lower value would be nothing. Look for a slip in the figures.';
    case 'did-not-converge':
      return 'No best fit was found for these pulls. Look for a slip in the figures.';
  }
}
