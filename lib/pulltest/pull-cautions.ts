/** The step of a pull test at which a caution is shown. */
export const PULL_STEPS = ['making', 'setting-up', 'pulling', 'after'] as const;
export type PullStep = (typeof PULL_STEPS)[number];

/**
 * What can hurt at a pull test, and the usual caution. Common practice, no source; data sheets, local rules and licensed
 * practice come first.
 */
export function pullCautions(step: PullStep): readonly string[] {
  switch (step) {
    case 'making':
      return [
        'Uncured epoxy harms skin and lungs: gloves, fresh air, and what the data sheet says.',
        'Wire ends fly when cut: glasses on, hold both ends.',
      ];
    case 'setting-up':
      return [
        'Take every hook off the specimen and off the line.',
        'Put a shield between you and the specimen, and wear glasses behind it.',
        'Use shackles and line rated well above the load you mean to reach.',
        'Tether scale, jig and specimen: what lets go flies.',
      ];
    case 'pulling':
      return [
        'Stand clear of the line of pull, and keep others out of it.',
        'Pull with a screw, a lever or a winch, slowly, over a minute or more. Never jerk it by hand.',
        'Stop when wood cracks or wire creeps, if you do not need the peak.',
      ];
    case 'after':
      return ['A piece pulled to its peak is damaged even if it looks whole: mark it and never sell it.'];
  }
}
