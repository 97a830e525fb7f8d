import { Caution } from '@/app/_ui/caution';
import { CAUTION_PRECEDENCE } from '@/app/_ui/caution-words';
import packageFile from '@/package.json';

/** What this is, what its numbers are worth, and the cautions of the workshop in one place. */
export function AboutShop() {
  return (
    <div className="grid gap-4">
      <p className="max-w-3xl">
        Lurewright {packageFile.version}, under the MIT licence. Hours and strengths are computed from the figures you
        entered and the temperatures that were logged. They are estimates with stated limits, never a rating and never a
        guarantee. Where a figure or a rule of your product, your country or a licensed trade says otherwise, it holds.
      </p>
      <p className="max-w-3xl">{CAUTION_PRECEDENCE}</p>
      <div className="grid gap-3 md:grid-cols-2">
        <Caution topic="epoxy" isBrief />
        <Caution topic="heat" isBrief />
        <Caution topic="dust" isBrief />
        <Caution topic="wire" isBrief />
        <Caution topic="pull" isBrief />
        <Caution topic="solvent" isBrief />
        <Caution topic="lead" isBrief />
      </div>
    </div>
  );
}
