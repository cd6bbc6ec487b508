// Fourth and fifth step: hold the tips in boiling water, or in ice water, until they have come to rest, and note what they show.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { NumberInput } from '../boil/inputs.tsx';
import { settings } from '../client/store.ts';
import type { ProbeCheck, ProbeWatch } from '../client/types.ts';
import { temperature, unitSymbols } from '../words/amounts.ts';
import { checkWords, restWords } from '../words/setup-words.ts';
import { usePolled } from './polled.ts';
import { change, draft, noteCheck, recallPlace } from './setup-draft.ts';

interface RowProps {
  one: ProbeWatch['channels'][number];
  where: ProbeCheck['in'];
  refused: (why: string | null) => void;
}

function CheckRow({ one, where, refused }: RowProps): JSX.Element {
  const noted = draft.value.checks[one.channel]?.[where];
  const name = draft.value.names[one.channel];
  const isSteady = one.state === 'steady';
  const note = async (): Promise<void> => refused(await noteCheck(one.channel, where, settings.value));
  return (
    <li class={isSteady ? 'channel channel-steady' : 'channel'}>
      <b>{name ? `${name} (${one.channel})` : one.channel}</b>
      <span class="probe-number">{one.celsius === null ? 'no value' : temperature(one.celsius, settings.value)}</span>
      <span>
        {isSteady ? '✓ ' : '… '}
        {restWords(one)}
        {noted !== undefined && <small class="setup-note">✓ Noted: {checkWords(noted, settings.value)}</small>}
      </span>
      <button
        type="button"
        disabled={!isSteady}
        aria-label={`Note ${name ? name : one.channel}`}
        onClick={() => void note()}
      >
        {noted === undefined ? 'Note it' : 'Note it again'}
      </button>
    </li>
  );
}

function PlaceFields(): JSX.Element {
  const { altitude, pressure } = draft.value;
  const units = unitSymbols(settings.value);
  useEffect(() => void recallPlace(settings.value).catch(() => undefined), []);
  return (
    <div class="fields">
      <NumberInput
        label="Height of the place over the sea"
        unit={units.height}
        value={altitude}
        set={(value) => change({ altitude: value })}
      />
      <NumberInput
        label="Air pressure by a barometer here, if there is one"
        unit={units.pressure}
        hint="makes it surer"
        value={pressure}
        set={(value) => change({ pressure: value })}
      />
    </div>
  );
}

export function CheckStep({ where }: { where: ProbeCheck['in'] }): JSX.Element {
  const [problem, setProblem] = useState<string | null>(null);
  const { path, names, checks } = draft.value;
  const watch = usePolled<ProbeWatch>({ probe_watch: { path: path ?? '' } });
  const channels = (watch?.channels ?? []).filter(({ channel }) => channel in names);
  const isAny = Object.values(checks).some((one) => one[where] !== undefined);
  const isBoil = where === 'boiling';
  return (
    <>
      {isBoil && <PlaceFields />}
      <p>
        {isBoil
          ? 'Bring plain water to a full boil, and hold the tips under the surface, off the bottom, until they have come to rest: about a minute. Mind the steam.'
          : 'Stir crushed ice with a little water, and hold the tips in the middle of it until they have come to rest. This tells a second point; it can be left out.'}
      </p>
      <ul class="channels">
        {channels.map((one) => (
          <CheckRow key={one.channel} one={one} where={where} refused={setProblem} />
        ))}
      </ul>
      {problem !== null && (
        <p class="problem" role="alert">
          ✕ {problem}
        </p>
      )}
      <p class="row">
        <button
          type="button"
          class={isAny ? 'main-button' : ''}
          onClick={() => change({ step: isBoil ? 'ice' : 'done' })}
        >
          {isAny
            ? isBoil
              ? 'On to ice water'
              : 'On to the end'
            : isBoil
              ? 'Leave boiling water out'
              : 'Leave ice water out'}
        </button>
        {isBoil && isAny && (
          <button type="button" onClick={() => change({ step: 'done' })}>
            Without ice, on to the end
          </button>
        )}
      </p>
    </>
  );
}
