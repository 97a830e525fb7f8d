import { type Body, bodyFromProfile } from '@/lib/geometry/body';
import type { ProfileStation } from '@/lib/geometry/body-profile';

/** A body that must be one. */
export function body(stations: readonly ProfileStation[]): Body {
  const check = bodyFromProfile(stations, null);
  if (!check.ok) throw new Error(`${check.code} at ${check.index}`);
  return check.body;
}

/** A straight round bar with flat ends. */
export function bar(lengthMm: number, radiusMm: number): Body {
  return body([
    { xMm: 0, halfHeightMm: radiusMm, halfWidthMm: radiusMm },
    { xMm: lengthMm, halfHeightMm: radiusMm, halfWidthMm: radiusMm },
  ]);
}

/** An ellipsoid drawn with many stations. */
export function ellipsoid(lengthMm: number, halfHeightMm: number, halfWidthMm: number, count = 201): Body {
  return body(
    Array.from({ length: count }, (_, i) => {
      const angle = (Math.PI * i) / (count - 1);
      const share = i === 0 || i === count - 1 ? 0 : Math.sin(angle);
      return {
        xMm: 0.5 * lengthMm * (1 - Math.cos(angle)),
        halfHeightMm: halfHeightMm * share,
        halfWidthMm: halfWidthMm * share,
      };
    }),
  );
}
