// The form of a plan: the sap that there is, the day and the place, and the pans with their fires.
import type { JSX } from 'preact';
import { anotherPan, usualBrix } from '../boil/boil-draft.ts';
import type { PanDraft } from '../boil/boil-draft.ts';
import { NumberInput, Select, saidOptions } from '../boil/inputs.tsx';
import { SapFields } from '../boil/sap-fields.tsx';
import { withSap } from '../boil/sap-usual.ts';
import { saps, settings } from '../client/store.ts';
import { inField } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import { DateInput } from '../boil/date-input.tsx';
import type { MessageKey } from '../language/say.ts';
import { focusNewest } from '../shell/arrival.tsx';
import { celsiusShown, number, strengthShown, unitSymbols } from '../words/amounts.ts';
import type { SapKey } from '../words/sap-words.ts';
import { problemInSapField, withStore } from './plan-draft.ts';
import type { PlanDraft } from './plan-draft.ts';
import { PlanPanFields } from './plan-pan-fields.tsx';
import { StoreOffer } from './store-offer.tsx';

/** In the order of the form that notes a pressure. */
const WHERE: readonly (readonly [PlanDraft['pressureAt'], MessageKey])[] = [
  ['station', 'plan.from_barometer'],
  ['altimeter', 'plan.from_airfield'],
  ['sea-level', 'plan.from_weather_page'],
];

/** Sap as it is usually kept, °C, as the plan takes it. */
const COLD_C = 5;

const usualNumber = (value: number, digits: number): string =>
  say('plan.usual_number', { value: inField(value, digits) });

/** The usual strength of sap of this kind; where nobody knows one, that it is usual. */
function usualStrength(kind: SapKey): string {
  const brix = saps.value.find(({ key }) => key === kind)?.typicalBrix ?? null;
  return brix === null ? say('plan.usual') : say('plan.usual_number', { value: strengthNumber(brix) });
}

const strengthNumber = (brix: number): string =>
  number(strengthShown(brix, settings.value), settings.value.strength === 'sg' ? 3 : 1);

interface FormProps {
  current: PlanDraft;
  set: (next: PlanDraft) => void;
}

function SapForm({ current, set }: FormProps): JSX.Element {
  const shown = settings.value;
  const units = unitSymbols(shown);
  const [first] = current.boil.pans;
  const setAll = (change: (pan: PanDraft) => PanDraft): void =>
    set({ ...current, boil: { ...current.boil, pans: current.boil.pans.map(change) } });
  return (
    <section class="panel" aria-label={say('plan.sap')}>
      <h2>{say('plan.sap')}</h2>
      <div class="fields">
        <NumberInput
          label={say('plan.how_much')}
          unit={units.volume}
          value={current.litres}
          wrong={problemInSapField('litres', current, shown)}
          set={(litres) => set({ ...current, litres })}
        />
        {first !== undefined && <SapFields sap={first.sap} set={(sap) => setAll((pan) => withSap(pan, sap, shown))} />}
        <NumberInput
          label={say('plan.how_strong')}
          unit={units.strength}
          hint={first === undefined ? say('plan.usual') : usualStrength(first.sap.kind)}
          value={current.strength}
          wrong={problemInSapField('strength', current, shown)}
          set={(strength) => set({ ...current, strength })}
        />
        <NumberInput
          label={say('plan.how_warm')}
          unit={units.temperature}
          hint={usualNumber(celsiusShown(COLD_C, shown), 0)}
          value={current.celsius}
          wrong={problemInSapField('celsius', current, shown)}
          set={(celsius) => set({ ...current, celsius })}
        />
        {first !== undefined && (
          <NumberInput
            label={say('plan.finish_if')}
            unit={units.strength}
            hint={say('plan.usual_number', { value: strengthNumber(usualBrix(first.sap.kind)) })}
            value={first.finish === 'strength' ? first.finishAt : ''}
            set={(finishAt) =>
              setAll((pan) => ({ ...pan, finish: finishAt.trim() === '' ? 'usual' : 'strength', finishAt }))
            }
          />
        )}
      </div>
      {first !== undefined && (
        <StoreOffer sap={first.sap.kind} take={(stored) => set(withStore(current, stored, shown))} />
      )}
    </section>
  );
}

function DayForm({ current, set }: FormProps): JSX.Element {
  const units = unitSymbols(settings.value);
  return (
    <section class="panel" aria-label={say('plan.day')}>
      <h2>{say('plan.day')}</h2>
      <div class="fields">
        <DateInput
          label={say('plan.fire_lit')}
          value={current.start}
          withTime
          set={(start) => set({ ...current, start, isStartTyped: true })}
        />
        <DateInput
          label={say('plan.leave')}
          value={current.until}
          withTime
          set={(until) => set({ ...current, until })}
        />
        <NumberInput
          label={say('plan.height')}
          unit={units.height}
          value={current.boil.altitude}
          set={(altitude) => set({ ...current, boil: { ...current.boil, altitude } })}
        />
        <NumberInput
          label={say('plan.pressure')}
          unit={units.pressure}
          hint={say('plan.usual')}
          value={current.pressure}
          set={(pressure) => set({ ...current, pressure })}
        />
        {current.pressure !== '' && (
          <Select
            label={say('plan.figure_is')}
            value={current.pressureAt}
            options={saidOptions(WHERE)}
            set={(pressureAt) => set({ ...current, pressureAt })}
          />
        )}
      </div>
    </section>
  );
}

function PansForm({ current, set }: FormProps): JSX.Element {
  const { boil } = current;
  const setPans = (pans: PanDraft[]): void => set({ ...current, boil: { ...boil, pans } });
  const replace = (old: PanDraft, next: PanDraft[]): void =>
    setPans(boil.pans.flatMap((each) => (each === old ? next : [each])));
  return (
    <section class="panel" aria-label={say('plan.pans')}>
      <h2>{say('plan.pans')}</h2>
      {boil.pans.map((pan) => (
        <PlanPanFields
          key={pan.before.id}
          pan={pan}
          change={(next) => replace(pan, [next])}
          remove={boil.pans.length > 1 ? () => replace(pan, []) : null}
        />
      ))}
      <button
        type="button"
        onClick={({ currentTarget }) => {
          setPans([...boil.pans, anotherPan(boil.pans, settings.value, saps.value)]);
          focusNewest(currentTarget.parentElement);
        }}
      >
        {say('boil.another_pan')}
      </button>
    </section>
  );
}

export function PlanForm(props: FormProps): JSX.Element {
  return (
    <>
      <SapForm {...props} />
      <DayForm {...props} />
      <PansForm {...props} />
    </>
  );
}
