import type { BodyRefusal } from '@/lib/geometry/body';
import type { ShankRefusal } from '@/lib/geometry/shank-path';
import type { WireRefusal } from '@/lib/materials/resolved-wire';
import type { WoodRefusal } from '@/lib/materials/resolved-wood';
import type { NoEstimateReason } from '@/lib/strength/estimate';
import type { FailureWay } from '@/lib/strength/strength-result';

/** Why there is no estimate, as the end of "No estimate: ...". */
export const NO_ESTIMATE_WORDS: Readonly<Record<NoEstimateReason, string>> = {
  'wire-diameter-outside': 'wire thinner than .020 in or thicker than .062 in was never compared with a test',
  'embedment-outside': 'a glued shank under 3/16 in or over 1 1/2 in lies outside what the formula is good for',
  'gravity-outside': 'the wood is lighter than 0.15 or heavier than 0.70, where the formula was never compared',
  'too-warm': 'above 60 °C nothing is relied on that epoxy holds',
  'shank-leaves-body': 'the shank is longer than the wood it goes into',
  'no-pulls-of-this-adhesive': 'nothing is known of this kind of adhesive: pull three joints of it at least',
  'twist-too-steep': 'the twist is steeper than 45°, where the strands lock',
  'eye-not-known': 'the inside of the eye is not known',
  'strength-not-known': "neither a statement of the maker nor the wire's temper tells the strength of the eye",
};

/** Why a wood's figures cannot be used. */
export const WOOD_REFUSAL_WORDS: Readonly<Record<WoodRefusal, string>> = {
  'weigh-the-wood':
    'this wood is sold at densities so far apart that only a weighed blank tells its strength: weigh one',
  'moisture-outside': 'the estimates hold for wood of 6 to 20 % moisture: dry it, or pull test it as it is',
  'green-figure-missing': 'at this moisture the green strength is needed too: enter it, or dry the wood to about 12 %',
  'unusable-figure': "one of the wood's figures cannot be right: check density, moisture and strengths",
};

/** Why a wire's strength is not known. */
export const WIRE_REFUSAL_WORDS: Readonly<Record<WireRefusal, string>> = {
  'temper-missing': 'stainless wire may be spring or soft, which differ by three to four times: say which',
  'strength-not-known': 'no table has this alloy and temper: enter the tensile strength that its maker states',
  'diameter-outside': 'the standard for spring wire has no such diameter here: enter the tensile strength',
  'unusable-figure': "one of the wire's figures cannot be right: check diameter and strengths",
};

/** What is wrong with a profile. */
export const BODY_REFUSAL_WORDS: Readonly<Record<BodyRefusal, string>> = {
  'too-few-stations': 'a profile needs two stations at least',
  'not-rising': 'the stations must follow each other from nose to tail',
  'not-a-size': 'a half-height or half-width is not a size',
  'no-wood-between': 'there is a station without wood between the ends',
  'length-differs': 'the last station does not lie at the stated length',
};

/** Why a hole cannot be where it is said to be. */
export const SHANK_REFUSAL_WORDS: Readonly<Record<ShankRefusal, string>> = {
  'not-on-body': 'the hole starts beside the body',
  'slant-outside': 'a slant beyond 85° is a groove, not a hole',
  'does-not-enter': 'the hole leads out of the body where it starts',
};

/** How an anchor gives way, as the end of "governed by ...". */
export const FAILURE_WORDS: Readonly<Record<FailureWay, string>> = {
  'bond-pull-out': 'the bond letting go',
  'wood-splitting': 'the wood over the shank splitting',
  'wire-in-eye': 'the wire breaking in the eye',
  'eye-opens': 'the open eye bending open',
  'fold-over': 'the wire ploughing into its mouth and pulling out aslant',
  'tear-out': 'the wire tearing out through thin cover',
  'screw-withdrawal': 'the screw eye pulling out',
  'screw-side': 'the screw eye bending over',
  'screw-core': 'the core of the screw eye breaking',
  'screw-eye-stated': 'the strength its maker states',
  'through-wire': 'the wire that runs through breaking',
  'eye-ovals': 'the eye pulling oval',
  'eye-bearing': 'the eye bedding into the wood',
  'first-bending': 'the shank bending',
};
