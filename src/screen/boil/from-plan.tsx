// What a boil that begins from a plan takes over from it, and the way to begin without it.
import type { JSX } from 'preact';
import { MINUTE_MS } from '../../core/quantities/time.ts';
import { settings } from '../client/store.ts';
import { say } from '../language/say.ts';
import { exactStrength, pressure, volume } from '../words/amounts.ts';
import { dayAndTime } from '../words/clock.ts';
import { typedLit } from './lit.ts';
import { listWords } from '../words/plan-words.ts';
import { emptyPots, plannedSetup } from './planned.ts';

/** Who starts no longer than this before the time of the plan keeps to it, ms. */
const SOON_MS = 5 * MINUTE_MS;

/** What the plan that this boil begins from says of the sap and the air: it stands in no field here. */
export function FromPlan(): JSX.Element | null {
  const plan = plannedSetup.value?.plan;
  if (plan === undefined) return null;
  const amount = volume(plan.litres, settings.value);
  const words =
    plan.brix === undefined
      ? say('boil.from_plan', { amount })
      : say('boil.from_plan_at', { amount, strength: exactStrength(plan.brix, settings.value) });
  const { pressure: told, start } = plan;
  const empty = emptyPots(plan);
  return (
    <p class="panel row">
      <span>
        {words}
        {told !== undefined && ` ${say('boil.from_plan_pressure', { pressure: pressure(told.hpa, settings.value) })}`}
        {empty.length > 0 &&
          ` ${say('boil.from_plan_end', { pans: listWords(empty.map(({ id, name }) => name ?? id)), count: empty.length })}`}
        {start !== undefined && typedLit.value === null && Date.parse(start) - Date.now() > SOON_MS && (
          <>
            <br />
            {say('boil.from_plan_later', { time: dayAndTime(`${start}Z`) })}
          </>
        )}
      </span>
      <button type="button" onClick={() => (plannedSetup.value = null)}>
        {say('boil.without_plan')}
      </button>
    </p>
  );
}
