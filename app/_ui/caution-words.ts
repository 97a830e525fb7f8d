import type { CautionTopic } from '@/lib/contracts/caution-topic';

interface CautionWords {
  readonly title: string;
  readonly text: string;
}

/** Usual workshop cautions, common practice, no source: the maker's own sheets and rules come first. */
export const CAUTION_WORDS: { readonly [T in Exclude<CautionTopic, 'none'>]: CautionWords } = {
  dust: {
    title: 'Dust',
    text: 'Wear a dust mask that fits and eye protection, and take the dust away at its source. Resin that is not fully cured makes dust that can sensitise: let it cure first.',
  },
  epoxy: {
    title: 'Resin and hardener',
    text: 'Wear gloves made for epoxy, keep it off the skin, and open a window or run the fan. Once sensitised to epoxy, a person stays so. Wash with soap, not with solvent.',
  },
  wire: {
    title: 'Wire ends',
    text: 'Wear eye protection when cutting, twisting or pulling wire. Cover the end with a hand or a cloth as you cut, and file it blunt.',
  },
  lead: {
    title: 'Lead',
    text: 'Wash hands and bench after handling lead, keep food and children away, and never sand it. Where your rules forbid lead, use another ballast.',
  },
  solvent: {
    title: 'Solvent and lacquer',
    text: 'Ventilate, keep flames and sparks away, and let rags dry flat outdoors: a heap of oily rags can catch fire by itself.',
  },
  heat: {
    title: 'Hot cup',
    text: 'A large or a warm mix heats itself: it can smoke, boil and burn. Spread it out, set it down on something that does not burn, outdoors if it smokes.',
  },
  pull: {
    title: 'Pull test',
    text: 'Stand out of the line of pull, wear eye protection, and put a cloth or a shield over the specimen: a wire that lets go flies.',
  },
};

/** Follows every caution. */
export const CAUTION_PRECEDENCE =
  'The safety data sheet and technical data sheet of your product and your local rules take precedence.';
