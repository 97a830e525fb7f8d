import { useWidth } from '@/app/_ui/use-width';
import { Why } from '@/app/_ui/why';
import { type BallastItem, carriedBallast } from '@/lib/geometry/ballast';
import type { Body } from '@/lib/geometry/body';
import { type CarriedItem, type Flotation, flotation, LEVEL_DEG } from '@/lib/geometry/flotation';
import { shankPath } from '@/lib/geometry/shank-path';
import type { ModelFacts } from '@/lib/spec/model-facts';
import type { SpecAnchor } from '@/lib/spec/spec-model';
import { lengthText, massText, volumeText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { placeOf } from './edits';

export interface FloatViewProps {
  readonly model: ModelFacts;
  readonly ballast: readonly BallastItem[] | null;
  readonly units: UnitChoice;
}

/** g/mL of hooks and rings: steel, from memory. */
const STEEL = 7.85;

/** Volume, mass, and how the body lies in the water with its ballast, hooks and rings. */
export function FloatView({ model, ballast, units }: FloatViewProps) {
  const { body, wood } = model;
  if (body === null) return <p>Measure the body first: how it floats comes from its profile.</p>;
  if (wood === null) return <p>Choose the wood, and weigh a blank if its density is not known.</p>;
  const hung = model.anchors.map(({ anchor }) => hardware(anchor, body));
  const items = [...(ballast ?? []).map(carriedBallast), ...hung.flatMap((one) => one.items)];
  const rest = flotation(body, wood.densityKgM3, items);
  const unknown = hung.flatMap((one) => one.unknown);
  const mass = (massG: number) => massText(massG, units.massUnit);
  return (
    <div className="grid gap-4 lg:grid-cols-[1fr_1fr]">
      <WaterView body={body} rest={rest} />
      <dl className="grid content-start gap-3 grid-cols-2">
        <Fact term="Volume of the body">{volumeText(rest.bodyVolumeMl)}</Fact>
        <Fact term="Body of wood alone">{mass((rest.bodyVolumeMl * wood.densityKgM3) / 1000)}</Fact>
        <Fact term="With ballast and hardware">{mass(rest.massG)}</Fact>
        <Fact term="In fresh water">{restWords(rest)}</Fact>
        <div className="col-span-2">
          <p className="text-sm text-ink-soft">
            {ballast === null ? 'Whether there is ballast was not said: none is counted. ' : ''}
            {unknown.length === 0 ? '' : `Mass not known, not counted: ${unknown.join(', ')}. `}
            Paint, glue and the eyes' wire are not counted.
          </p>
          <Why
            about="it lies so"
            formula="weight = water displaced; it comes to rest where buoyancy stands under the weight"
            inputs={[
              { label: 'Density of the wood', value: `${wood.densityKgM3.toFixed(0)} kg/m³` },
              {
                label: 'Centre of weight',
                value: `${lengthText(rest.gravityXMm, units.lengthUnit)} from the nose, ${lengthText(rest.gravityZMm, units.lengthUnit)} above the middle line`,
              },
              { label: 'Share of the body under water', value: `${(100 * rest.submergedShare).toFixed(0)} %` },
              { label: 'Counts as level', value: `within ${LEVEL_DEG}°, chosen` },
            ]}
            source="Archimedes; volume and centre from the profile, straight lines between the stations (derived)"
            assumption="Elliptic cross-sections. What hangs counts where it hangs from, less the water it displaces. Still fresh water, laid level on it."
          />
        </div>
      </dl>
    </div>
  );
}

/** Hook and ring of an anchor as they hang, and the names of those without a mass. */
function hardware(anchor: SpecAnchor, body: Body): { items: readonly CarriedItem[]; unknown: readonly string[] } {
  const place = placeOf(anchor);
  const path = place === null ? null : shankPath(body, place);
  const items: CarriedItem[] = [];
  const unknown: string[] = [];
  for (const fitting of [anchor.splitRing, anchor.hook]) {
    if (fitting === null) continue;
    const massG = fitting.sheet?.massG;
    if (massG === undefined || path === null || !path.ok) {
      unknown.push(`${fitting.name} at ${anchor.name}`);
      continue;
    }
    const { entryX, entryZ } = path.path;
    items.push({ massG, xMm: entryX, zMm: entryZ, volumeMl: massG / STEEL, isInside: false });
  }
  return { items, unknown };
}

function restWords(rest: Flotation): string {
  const trim = Math.abs(rest.trimDeg).toFixed(0);
  const lies = rest.isLevel ? 'level' : rest.trimDeg > 0 ? `nose up ${trim}°` : `nose down ${trim}°`;
  if (!rest.floats) return `sinks, ${lies}`;
  return Math.abs(rest.trimDeg) >= 90 ? `floats standing, nose ${rest.trimDeg > 0 ? 'up' : 'down'}` : `floats, ${lies}`;
}

function Fact({ term, children }: { readonly term: string; readonly children: string }) {
  return (
    <div className="border-l-2 border-line-strong pl-3">
      <dt className="text-sm text-ink-soft">{term}</dt>
      <dd className="font-semibold">{children}</dd>
    </div>
  );
}

/** The body as it lies at rest, turned by its trim, with the water. */
function WaterView({ body, rest }: { readonly body: Body; readonly rest: Flotation }) {
  const [holder, widthPx] = useWidth<HTMLDivElement>(420);
  const heightPx = Math.min(260, Math.max(150, widthPx * 0.5));
  const turn = (rest.trimDeg * Math.PI) / 180;
  const [cosine, sine] = [Math.cos(turn), Math.sin(turn)];
  // Nose up: with x to the tail, a positive trim lifts the nose.
  const turned = (x: number, z: number) => ({ x: x * cosine + z * sine, z: -x * sine + z * cosine });
  const outline = [
    ...body.stations.map(({ xMm, halfHeightMm }) => turned(xMm, halfHeightMm)),
    ...body.stations.toReversed().map(({ xMm, halfHeightMm }) => turned(xMm, -halfHeightMm)),
  ];
  const surface = waterLevel(rest, turned, outline);
  const xs = outline.map(({ x }) => x);
  const zs = [...outline.map(({ z }) => z), surface];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...zs), Math.max(...zs)];
  const scale = Math.min((widthPx - 24) / (right - left), (heightPx - 40) / (high - low));
  const px = (x: number) => widthPx / 2 + (x - (left + right) / 2) * scale;
  const py = (z: number) => 20 + (high - z) * scale;
  const path = outline.map(({ x, z }) => `${px(x)} ${py(z)}`).join('L');
  const waterY = py(surface);
  return (
    <div ref={holder} className="min-w-0">
      <svg
        width={widthPx}
        height={heightPx}
        role="img"
        aria-label={`In water: ${restWords(rest)}`}
        className="block max-w-full text-xs"
      >
        <path d={`M${path}Z`} className="fill-chart-fill stroke-ink" strokeWidth="1.75" strokeLinejoin="round" />
        <rect
          x="0"
          y={waterY}
          width={widthPx}
          height={Math.max(0, heightPx - waterY)}
          className="fill-chart-a opacity-20"
        />
        <path d={`M0 ${waterY}H${widthPx}`} className="stroke-chart-a" strokeWidth="2" strokeDasharray="10 4" />
        <text x={widthPx - 4} y={waterY - 6} textAnchor="end" className="fill-ink-soft">
          water
        </text>
      </svg>
    </div>
  );
}

/** Height of the water in the turned picture; above everything for a body that sinks. */
function waterLevel(
  rest: Flotation,
  turned: (x: number, z: number) => { readonly z: number },
  outline: readonly { readonly z: number }[],
): number {
  const zs = outline.map(({ z }) => z);
  const [low, high] = [Math.min(...zs), Math.max(...zs)];
  if (!rest.floats) return high + 0.15 * (high - low);
  if (rest.waterline === null) return low + rest.submergedShare * (high - low);
  return turned(0, rest.waterline.heightMm).z;
}
