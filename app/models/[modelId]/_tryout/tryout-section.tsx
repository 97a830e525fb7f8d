import { currentShop } from '@/app/_server/shop';
import { currentSpecShop } from '@/app/_server/spec-shop';
import { Section } from '@/app/_ui/page';
import { StrengthCaution } from '@/app/models/_components/strength-caution';
import type { SpecShop } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import { db } from '@/prisma/client';
import type { Revision } from '@/prisma/data/revisions';
import { specModelOf } from '@/prisma/data/spec-models';
import { listWaivers } from '@/prisma/data/waivers';
import { saveTriedSpecAction } from './actions';
import { TryoutPlace } from './tryout-place';

export interface TryoutSectionProps {
  readonly modelName: string;
  readonly revision: Revision;
}

/** The place on a model's page where depth, lean, place and load of its anchors are tried out. */
export async function TryoutSection({ modelName, revision }: TryoutSectionProps) {
  const database = await db();
  const [{ shop, shelf }, waivers, units] = await Promise.all([
    currentSpecShop(),
    listWaivers(database, [revision.id]),
    currentShop(),
  ]);
  const model = specModelOf(revision, { modelName, shelf, waivers });
  const { lengthUnit, temperatureUnit, massUnit, forceUnit } = units;
  return (
    <Section
      id="tryout"
      title="Try it"
      lead="Drag or type depth, lean, place and load of each anchor, and see at once what it does. Nothing is kept until you save it."
    >
      <StrengthCaution />
      <TryoutPlace
        world={{
          model,
          shop: shopFor(model, shop),
          ballast: revision.ballast,
          units: { lengthUnit, temperatureUnit, massUnit, forceUnit },
          seenAt: revision.frozenAt === null ? revision.updatedAt : null,
        }}
        action={saveTriedSpecAction.bind(null, revision.id)}
      />
    </Section>
  );
}

/** What of the shop one model's findings need, so that little has to be sent to the browser. */
function shopFor(model: SpecModel, shop: SpecShop): SpecShop {
  const wires = new Set(model.anchors.map(({ wire }) => wire?.materialId));
  return { ...shop, habits: shop.habits?.filter(({ wireMaterialId }) => wires.has(wireMaterialId)) ?? null };
}
