// Fourth and fifth step: hold the tips in boiling water, or in ice water, until they have come to rest, and note what they show.
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { NumberInput } from '../boil/inputs.tsx';
import { NOT_THERE_C } from '../../protocol/probe-setup-messages.ts';
import { settings } from '../client/store.ts';
import type { ProbeCheck, ProbeWatch } from '../client/types.ts';
import { temperature, unitSymbols } from '../words/amounts.ts';
import { checkWords, notThereWords, restWords } from '../words/setup-words.ts';
import { usePolled } from './polled.ts';
import { change, changePlace, draft, noteCheck, placeTyped, recallPlace } from './setup-draft.ts';
import { useRefusal } from '../shell/refusal.tsx';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';

interface RowProps {
  one: ProbeWatch['channels'][number];
  where: ProbeCheck['in'];
  refused: (why: string | null) => void;
}

/** Water boils hotter than this wherever somebody lives, °C. */
const LEAST_BOILING_C = 60;

/** What is surely no ice water, or no boiling water, is not offered to be noted: the host would refuse it. */
const isFarFrom = (where: ProbeCheck['in'], celsius: number): boolean =>
  where === 'ice' ? Math.abs(celsius) > NOT_THERE_C : celsius < LEAST_BOILING_C;

function CheckRow({ one, where, refused }: RowProps): JSX.Element {
  const noted = draft.value.checks[one.channel]?.[where];
  const name = draft.value.names[one.channel];
  const isSteady = one.state === 'steady';
  const isFar = one.celsius !== null && isFarFrom(where, one.celsius);
  const note = async (): Promise<void> => refused(await noteCheck(one.channel, where, settings.value));
  return (
    <li class={isSteady ? 'channel channel-steady' : 'channel'}>
      <b>{name ? `${name} (${one.channel})` : one.channel}</b>
      <span class="probe-number">
        {one.celsius === null ? say('probes.no_value') : temperature(one.celsius, settings.value)}
      </span>
      <span>
        {isSteady && !isFar ? '✓ ' : '… '}
        {isFar ? notThereWords(where, settings.value) : restWords(one)}
        {noted !== undefined && (
          <small class="setup-note">{say('onboarding.noted', { check: checkWords(noted, settings.value) })}</small>
        )}
      </span>
      <button
        type="button"
        disabled={!isSteady || isFar}
        aria-label={say('onboarding.note_of', { name: name ? name : one.channel })}
        onClick={() => void note()}
      >
        {noted === undefined ? say('onboarding.note') : say('onboarding.note_again')}
      </button>
    </li>
  );
}

function PlaceFields(): JSX.Element {
  const shown = settings.value;
  const { altitude, pressure } = placeTyped(draft.value, shown);
  const units = unitSymbols(shown);
  useEffect(() => void recallPlace(settings.value).catch(() => undefined), []);
  return (
    <div class="fields">
      <NumberInput
        label={say('boil.height')}
        unit={units.height}
        value={altitude}
        set={(value) => changePlace({ altitude: value }, shown)}
      />
      <NumberInput
        label={say('onboarding.pressure')}
        unit={units.pressure}
        hint={say('onboarding.surer')}
        value={pressure}
        set={(value) => changePlace({ pressure: value }, shown)}
      />
    </div>
  );
}

export function CheckStep({ where }: { where: ProbeCheck['in'] }): JSX.Element {
  const { refuse, sentence } = useRefusal();
  const { path, names, checks } = draft.value;
  const watch = usePolled<ProbeWatch>({ probe_watch: { path: path ?? '' } });
  const channels = (watch?.channels ?? []).filter(({ channel }) => channel in names);
  const isAny = Object.values(checks).some((one) => one[where] !== undefined);
  const isBoil = where === 'boiling';
  return (
    <>
      {isBoil && <PlaceFields />}
      <p>{isBoil ? say('onboarding.boil_how') : say('onboarding.ice_how')}</p>
      <ul class="channels">
        {channels.map((one) => (
          <CheckRow
            key={one.channel}
            one={one}
            where={where}
            refused={(why) => refuse(why === null ? null : hostWords(why))}
          />
        ))}
      </ul>
      {sentence}
      <p class="row">
        <button
          type="button"
          class={isAny ? 'main-button' : ''}
          onClick={() => change({ step: isBoil ? 'ice' : 'done' })}
        >
          {isAny
            ? isBoil
              ? say('onboarding.on_to_ice')
              : say('onboarding.on_to_end')
            : isBoil
              ? say('onboarding.no_boil')
              : say('onboarding.no_ice')}
        </button>
        {isBoil && isAny && (
          <button type="button" onClick={() => change({ step: 'done' })}>
            {say('onboarding.skip_ice')}
          </button>
        )}
      </p>
    </>
  );
}
