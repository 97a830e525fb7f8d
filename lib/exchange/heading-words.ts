import type { TemperatureUnit } from './reading-layout';

/**
 * What the words of a column heading tell, in the languages loggers are sold in. From memory and from headings of real
 * files; a heading that says nothing is not an error, the values then decide.
 */
export type HeadingRole =
  | 'stamp'
  | 'date'
  | 'clock'
  | 'year'
  | 'day-of-year'
  | 'month'
  | 'day'
  | 'hour'
  | 'minute'
  | 'temperature'
  | 'other-temperature'
  | 'humidity'
  | 'index';

const WORDS: readonly (readonly [HeadingRole, RegExp])[] = [
  ['day-of-year', /\bdoy\b|day ?of ?(the ?)?year|\byear ?day\b|\byday\b|\bjulian|\bjday\b|tag im jahr/],
  [
    'stamp',
    /time ?stamp|date ?[/,+&-]? ?(and )?time|datum ?[/,+&-]? ?(zeit|uhrzeit)|zeitstempel|zeitpunkt|horodat|fecha ?[/,y-]? ?hora|data ?[/,e-]? ?ora|data ?[/,e-]? ?hora|tijdstip|\bepoch|\bunix|tmstamp|\bts\b|datetime/,
  ],
  ['humidity', /humid|feucht|\brh\b|\brf\b|\bhr\b ?%|% ?rh|humedad|umidita|umidade|vochtig|fukt|kosteus|^%$/],
  ['minute', /^(minute|minutes|min|mi)$/],
  [
    'other-temperature',
    /(dew|taupunkt|rocio|rosee|rugiada|wet|heat ?index|wind ?chill|alarm|limit|\bmin\b|\bmax\b|minimum|maximum|\blow\b|\bhigh\b|std|set ?point|sollwert|batter)/,
  ],
  [
    'temperature',
    /temp|celsius|fahrenheit|kelvin|°|\bdeg\.? ?[cf]\b|^t$|\bt ?[[(]|\bt ?[cf]\b|\bch(annel)? ?\d|\bkanal ?\d|lampotila|teplota|sicaklik|hitastig/,
  ],
  ['year', /^(year|yyyy|yr|jahr|annee|ano|anno|jaar|ar)$/],
  ['month', /^(month|mm|mo|monat|mois|mes|mese|maand|manad)$/],
  ['day', /^(day|dd|tag|jour|dia|giorno|dag)$/],
  ['hour', /^(hour|hours|hh|hr|hrs|stunde|heure|hora|ora|uur|timme|hour ?of ?day)\b/],
  ['date', /\b(date|datum|fecha|data|dato|pvm|dag|tag)\b/],
  ['clock', /\b(time|zeit|uhrzeit|hora|heure|ora|tid|tijd|klokkeslett|klo|hhmm|hh:mm|godzina|cas)\b/],
  ['index', /^(index|no|nr|num|number|#|n|record|rec|rn|id|lfd\.? ?nr\.?|row|line|sample|#\.?)\.?$/],
];

/** A heading in lower case, without accents, quotes and doubled spaces. */
export function plainHeading(heading: string): string {
  return heading
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/º|˚/g, '°')
    .replace(/["']/g, '')
    .replace(/[_\s]+/g, ' ')
    .trim()
    .toLowerCase();
}

/** What a heading says its column is, or null. */
export function headingRole(heading: string): HeadingRole | null {
  const plain = plainHeading(heading);
  if (plain === '') return null;
  const bare = plain.replace(/[[(].*?[\])]/g, '').trim();
  for (const [role, words] of WORDS) {
    // A heading may hold a unit that another role would take for itself ("Humidity [%]", "Temp. min [°C]").
    if (words.test(plain) || words.test(bare)) return isOtherTemperature(role, plain) ? 'temperature' : role;
  }
  return null;
}

/** "min" alone is minutes, and "Temperature (Low range)" is still a temperature: only clear words count. */
function isOtherTemperature(role: HeadingRole, plain: string): boolean {
  return role === 'other-temperature' && /range/.test(plain);
}

/** Unit of temperature that a heading names, or null. */
export function headingUnit(heading: string): TemperatureUnit | null {
  const plain = plainHeading(heading);
  if (/°\s?f\b|\bdeg(rees?|s)?\.? ?f(ahrenheit)?\b|fahrenheit|[[(]f[\])]|\bt(emp(erature)?)? f$|, ?f$/.test(plain))
    return 'F';
  if (
    /°\s?c\b|\bdeg(rees?|s)?\.? ?c(elsius)?\b|celsius|centigrade|grad ?c\b|[[(]c[\])]|\bt(emp(erature)?)? c$|, ?c$/.test(
      plain,
    )
  ) {
    return 'C';
  }
  return /kelvin|[[(]k[\])]/.test(plain) ? 'K' : null;
}

/** Offset in minutes that a heading such as "Date Time, GMT-05:00" names, or null. */
export function headingOffsetMinutes(heading: string): number | null {
  const zone = /\b(?:utc|gmt)\b\s*(?:([+\-\u2212])\s*(\d{1,2})(?::?(\d{2}))?)?/i.exec(heading);
  if (zone === null) return null;
  const [, sign, hours = '0', minutes = '0'] = zone;
  const size = Number(hours) * 60 + Number(minutes);
  return sign === '-' || sign === '\u2212' ? -size : size;
}
