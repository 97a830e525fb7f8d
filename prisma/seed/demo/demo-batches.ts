import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { BatchStory, type DemoBatch, pieces } from './batch-story';
import { EPOXY_5, EPOXY_30, EPOXY_60, TOPCOAT } from './demo-materials';
import { jerkbaitB, lipless, minnow, popper } from './demo-models';
import { IDA, MARLO, WES } from './demo-people';
import { type DemoTimes, dayFromNow, daysAgo } from './demo-times';

const ALL_ANCHORS = ['tie', 'belly', 'tail'];

/** Twelve poppers from the plank to the box. */
function finished(times: DemoTimes): DemoBatch {
  const at = (days: number, clock: string) => daysAgo(times, days, clock);
  const all = pieces(1, 12);
  const story = new BatchStory({
    number: 21,
    revision: popper,
    quantity: 12,
    dueOn: dayFromNow(times, -1),
    orderNote: 'Club order, dozen',
    openedAt: at(13, '18:32'),
    personId: WES,
  });
  story.work(at(13, '19:50'), WES, 'shape', all).work(at(13, '20:20'), WES, 'drill', all);
  const glue = story.mix(at(13, '20:31'), IDA, {
    operation: 'glue',
    materialId: EPOXY_30,
    massG: 9,
    temperatureC: 20.5,
  });
  story
    .joints(at(13, '20:41'), IDA, glue, pieces(1, 6), ALL_ANCHORS)
    .joints(at(13, '20:52'), IDA, glue, pieces(7, 12), ALL_ANCHORS)
    .close(at(13, '20:53'), IDA, glue)
    .work(at(11, '19:20'), WES, 'flush', all)
    .coats(at(11, '19:40'), IDA, { operation: 'seal', materialId: TOPCOAT, massG: 14, temperatureC: 20.3 }, [
      [8, pieces(1, 6)],
      [16, pieces(7, 12)],
    ])
    .work(at(9, '20:25'), MARLO, 'paint', all)
    .coats(at(9, '20:40'), IDA, { operation: 'top-1', materialId: TOPCOAT, massG: 14, temperatureC: 20.4 }, [[12, all]])
    .coats(at(8, '19:15'), IDA, { operation: 'top-2', materialId: TOPCOAT, massG: 14, temperatureC: 20.1 }, [[11, all]])
    .note(at(8, '19:32'), IDA, [], 'Turned by hand for the first half hour, no runs.')
    .work(at(6, '19:40'), WES, 'hooks', all)
    .work(at(2, '19:10'), IDA, 'pack', all)
    .finish(at(2, '19:14'), IDA);
  return story.done();
}

/** Eighteen minnows, painted; one split, one joint late, one slip of the keyboard put right. */
function painted(times: DemoTimes): DemoBatch {
  const at = (days: number, clock: string) => daysAgo(times, days, clock);
  const good = pieces(1, 18, [7]);
  const story = new BatchStory({
    number: 22,
    revision: minnow,
    quantity: 18,
    dueOn: dayFromNow(times, 6),
    orderNote: 'For the shop window in town',
    openedAt: at(10, '18:35'),
    personId: IDA,
  });
  story
    .work(at(10, '21:05'), IDA, 'shape', pieces(1, 18))
    .work(at(8, '19:15'), WES, 'drill', pieces(1, 9))
    .scrap(at(8, '19:18'), WES, [7], 'Split along the grain while drilling the tail.')
    .work(at(8, '19:40'), WES, 'drill', pieces(10, 18));
  const cup = { operation: 'glue', materialId: EPOXY_30, massG: 12, temperatureC: 20.5 };
  const mixedAt = at(8, '19:58');
  const first = story.mix(mixedAt, IDA, { ...cup, massG: 120 });
  story
    .correctMass(at(8, '20:00'), IDA, story.lastSeq, mixedAt, cup, 'Typed 120 g, the scale said 12.0 g.')
    .joints(at(8, '20:08'), IDA, first, pieces(1, 5), ALL_ANCHORS)
    .joints(at(8, '20:15'), WES, first, pieces(6, 9, [7]), ALL_ANCHORS)
    .close(at(8, '20:17'), IDA, first);
  const second = story.mix(at(8, '20:25'), IDA, { ...cup, massG: 12.4 });
  story
    .joints(at(8, '20:36'), IDA, second, pieces(10, 14), ALL_ANCHORS)
    .joints(at(8, '20:45'), WES, second, pieces(15, 17), ALL_ANCHORS)
    .joints(at(8, '20:47'), WES, second, [18], ['tie', 'belly'])
    .joints(at(8, '21:09'), WES, second, [18], ['tail'])
    .note(at(8, '21:11'), WES, [18], 'Tail hanger went in stringy after the hole was drilled anew. Pull this one.')
    .close(at(8, '21:12'), WES, second);
  const dab = { operation: 'lip', materialId: EPOXY_5, massG: 3, temperatureC: 20.4 };
  story
    .coats(at(7, '19:00'), IDA, dab, [[2, pieces(1, 6)]])
    .coats(at(7, '19:06'), IDA, dab, [[2, pieces(8, 12)]])
    .coats(at(7, '19:12'), IDA, dab, [[2, pieces(13, 18)]])
    .work(at(6, '19:50'), WES, 'flush', good)
    .coats(at(6, '20:05'), IDA, { operation: 'seal', materialId: TOPCOAT, massG: 22, temperatureC: 20.2 }, [
      [9, pieces(1, 9, [7])],
      [18, pieces(10, 18)],
    ])
    .work(at(4, '20:30'), MARLO, 'paint', pieces(1, 9, [7]))
    .work(at(1, '20:55'), MARLO, 'paint', pieces(10, 18))
    .note(at(1, '20:57'), MARLO, [], 'Perch pattern; the white under it needs one thin pass more next time.');
  return story.done();
}

/** Eight big jerkbaits between two topcoats: the window for the second closes soon. */
function betweenCoats(times: DemoTimes): DemoBatch {
  const at = (days: number, clock: string) => daysAgo(times, days, clock);
  const all = pieces(1, 8);
  const story = new BatchStory({
    number: 23,
    revision: jerkbaitB,
    quantity: 8,
    dueOn: dayFromNow(times, 4),
    orderNote: '',
    openedAt: at(12, '18:40'),
    personId: WES,
  });
  story.work(at(12, '21:10'), WES, 'shape', all).work(at(10, '19:05'), WES, 'drill', all);
  const glue = story.mix(at(10, '19:20'), IDA, {
    operation: 'glue',
    materialId: EPOXY_60,
    massG: 32,
    temperatureC: 20.5,
  });
  story
    .joints(at(10, '19:36'), IDA, glue, pieces(1, 4), ALL_ANCHORS)
    .joints(at(10, '19:49'), WES, glue, pieces(5, 8), ALL_ANCHORS)
    .close(at(10, '19:52'), IDA, glue)
    .work(at(7, '20:10'), WES, 'flush', all)
    .coats(at(7, '20:24'), IDA, { operation: 'seal', materialId: TOPCOAT, massG: 16, temperatureC: 20.4 }, [[10, all]])
    .work(at(3, '20:50'), MARLO, 'paint', all)
    .coats(
      times.windowClosesAt - 24 * HOUR_MS,
      IDA,
      { operation: 'top-1', materialId: TOPCOAT, massG: 18, temperatureC: 20.2 },
      [[9, all]],
    );
  return story.done();
}

/** Sixteen lipless baits glued the evening before a cold night. */
function curing(times: DemoTimes): DemoBatch {
  const at = (days: number, clock: string) => daysAgo(times, days, clock);
  const evening = times.glueUpDaysAgo;
  const story = new BatchStory({
    number: 24,
    revision: lipless,
    quantity: 16,
    dueOn: dayFromNow(times, 12),
    orderNote: 'Stock for spring',
    openedAt: at(4, '18:45'),
    personId: IDA,
  });
  story.work(at(4, '21:15'), IDA, 'shape', pieces(1, 16)).work(at(2, '19:30'), WES, 'drill', pieces(1, 16));
  const cup = { operation: 'glue', materialId: EPOXY_30, massG: 10, temperatureC: 20.4 };
  const first = story.mix(at(evening, '19:25'), IDA, cup);
  story
    .joints(at(evening, '19:36'), IDA, first, pieces(1, 4), ALL_ANCHORS)
    .joints(at(evening, '19:44'), IDA, first, pieces(5, 8), ALL_ANCHORS)
    .close(at(evening, '19:46'), IDA, first);
  const second = story.mix(at(evening, '19:58'), WES, cup);
  story
    .joints(at(evening, '20:09'), WES, second, pieces(9, 12), ALL_ANCHORS)
    .joints(at(evening, '20:18'), WES, second, pieces(13, 16), ALL_ANCHORS)
    .close(at(evening, '20:20'), WES, second)
    .note(at(evening, '20:28'), WES, [], 'Left on the rack by the window.');
  return story.done();
}

/** Ten poppers at the bench right now, with a cup that is running out. */
function gluing(times: DemoTimes): DemoBatch {
  const at = (days: number, clock: string) => daysAgo(times, days, clock);
  const ago = (minutes: number) => times.nowAt - minutes * MINUTE_MS;
  const story = new BatchStory({
    number: 25,
    revision: popper,
    quantity: 10,
    dueOn: dayFromNow(times, 15),
    orderNote: 'Reorder of number 21',
    openedAt: at(3, '18:50'),
    personId: WES,
  });
  story.work(at(3, '20:40'), WES, 'shape', pieces(1, 10)).work(at(2, '20:10'), WES, 'drill', pieces(1, 10));
  const cup = story.mix(ago(7), IDA, { operation: 'glue', materialId: EPOXY_30, massG: 8, temperatureC: 20.3 });
  story.joints(ago(4), IDA, cup, pieces(1, 2), ALL_ANCHORS).joints(ago(1.5), IDA, cup, [3, 4], ALL_ANCHORS);
  return story.done();
}

/** Twenty-four minnows just opened. */
function fresh(times: DemoTimes): DemoBatch {
  const story = new BatchStory({
    number: 26,
    revision: minnow,
    quantity: 24,
    dueOn: dayFromNow(times, 30),
    orderNote: 'Half perch, half plain',
    openedAt: times.nowAt - 55 * MINUTE_MS,
    personId: MARLO,
  });
  return story.done();
}

/** Six batches, each at another stage of its route when the demo is loaded. */
export function demoBatches(times: DemoTimes): readonly DemoBatch[] {
  return [finished(times), painted(times), betweenCoats(times), curing(times), gluing(times), fresh(times)];
}
