import type { CalibrationRefusal, CalibrationWarning } from '@/lib/pulltest/calibration';

/** Why an analysis may not be accepted, and what to do. */
export function draftRefusalText(code: CalibrationRefusal | 'no-material' | 'no-condition'): string {
  switch (code) {
    case 'no-readings':
      return 'No pull counts yet: there is nothing to accept.';
    case 'fell-out':
      return 'A joint came out by hand. No model may rest on joints made like these: find out why, and pull a new series.';
    case 'no-material':
      return 'The series does not name its wood, glue and wire from Stock, so nobody knows which models it speaks for.';
    case 'no-condition':
      return 'The series has no such materials.';
  }
}

/** What to keep in mind about a calibration. */
export function calibrationWarningText(warning: CalibrationWarning): string {
  switch (warning) {
    case 'fewer-than-3-mixes':
      return 'Fewer than three mixes: how mixes differ is not in it.';
    case 'fewer-than-3-depths':
      return 'Fewer than three depths: how strength bends over depth is not in it.';
    case 'fewer-than-8-failed':
      return 'Fewer than eight joints failed themselves: the scatter stays the assumed one.';
    case 'scale-not-checked':
      return 'Read on a scale that was not named or not checked within half a year.';
  }
}
