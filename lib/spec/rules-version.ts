/** Raised with every change to a rule, its figures or its words; stored with findings that a batch takes along. */
export const RULES_VERSION = 1;
