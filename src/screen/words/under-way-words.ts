// What is left of a planned boil that runs, in sentences.
import type { PlanView } from '../../protocol/plan-schema.ts';
import type { Settings } from '../client/types.ts';
import { say, setApart } from '../language/say.ts';
import { litresShown, volume } from './amounts.ts';
import { planHours, planRange } from './plan-words.ts';

type Under = NonNullable<PlanView['under_way']>;

/** What the hours that are left wait for, pan by pan. */
function lackingWords({ lacking }: Under, nameOf: (pan: string) => string): string {
  const each = lacking.map(({ pan, litres, brix }) =>
    say('plan.under.lacks', { pan: nameOf(pan), what: litres && brix ? 'both' : litres ? 'litres' : 'strength' }),
  );
  return each.length === 0 ? say('plan.under.no_fire') : say('plan.under.lacking', { lacks: setApart(each) });
}

interface UnderWayWords {
  main: string;
  range: string;
  /** When the plan as it was made has it done; null where it told no time. */
  made: string | null;
}

/**
 * What is left of a boil that runs; null hours are not known, and then it says which pan lacks what. `clocks` are the times
 * of day at which it is done, as it is seen now and as the plan has it; null where that is not known.
 */
export function underWayWords(
  under: Under,
  nameOf: (pan: string) => string,
  settings: Settings,
  clocks: { seen: string | null; made: string | null },
): UnderWayWords {
  // Both as finely, so that they add up.
  const digits = litresShown(under.poured_litres || under.left_litres, settings) < 10 ? 1 : 0;
  const left = volume(under.left_litres, settings, digits);
  const poured =
    under.poured_litres === 0
      ? say('plan.under.none_poured', { left })
      : say('plan.under.poured', { poured: volume(under.poured_litres, settings, digits), left });
  const made = clocks.made === null ? null : say('plan.under.made', { clock: clocks.made });
  const { hours, hours_low: low, hours_high: high } = under;
  if (hours === null || low === null || high === null || clocks.seen === null)
    return { main: say('plan.under.unknown'), range: `${lackingWords(under, nameOf)} ${poured}`, made };
  return {
    main: say('plan.under.main', { clock: clocks.seen }),
    range: say('plan.under.range', { time: planHours(hours), ...planRange(low, high), poured }),
    made,
  };
}
