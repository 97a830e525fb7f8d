/** Minutes since 00:00 as a browser's time field wants them; the end of the day is its 00:00. */
export function timeInput(minuteOfDay: number): string {
  const minute = minuteOfDay % 1440;
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}
