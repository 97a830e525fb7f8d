import type { CardObstacle } from '@/lib/prepare/preparation';

/** Why there is no card, and what to do about it. */
export const OBSTACLE_WORDS: { readonly [O in CardObstacle]: string } = {
  'no-material': 'The route names no glue or coat for this operation. Name one in the next revision of the model.',
  'no-sheet': 'This material has no data sheet figures yet. Enter them in Stock.',
  'no-ratio': 'The data sheet in Stock has no mixing ratio. Enter it first.',
  'volume-ratio-without-densities':
    'The ratio is by volume, and weighing it as it stands would be wrong. Enter the densities of both parts in Stock, or measure by volume.',
  'no-pot-life': 'The data sheet in Stock has no pot life. Enter it first.',
  'points-contradict': 'The pot lives of the data sheet contradict each other. Look at them in Stock.',
  'cannot-weigh': 'No cup that this sheet allows can be weighed well enough on this scale. Choose a finer one.',
  'cup-too-heavy': 'Even the smallest cup would be heavier than the sheet allows.',
  'too-slow': 'Not even one joint is set within the pot life. Work cooler, faster, or with a slower glue.',
  'piece-too-slow': 'All joints of one piece from one mix take longer than the pot life. Spread the joints instead.',
  'anchor-figures':
    'Wire, bit or depth of these anchors is missing, or the wire does not go into its hole. Enter them in the model:',
  'no-body': 'The body has no profile yet, so its surface cannot be told. Draw it in the model.',
  'no-bill-line':
    'This glue sets no anchor, and the bill does not say how many grams a piece takes. Add it to the bill of the model.',
};
