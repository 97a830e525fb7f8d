/** What can hurt at a step of a route; the screen shows the usual caution there. */
export const CAUTION_TOPICS = ['dust', 'epoxy', 'wire', 'lead', 'solvent', 'heat', 'pull', 'none'] as const;
export type CautionTopic = (typeof CAUTION_TOPICS)[number];

/** The topic a stored word names; a word this version does not know shows no caution of its own. */
export function cautionTopic(word: string): CautionTopic {
  return CAUTION_TOPICS.find((topic) => topic === word) ?? 'none';
}
