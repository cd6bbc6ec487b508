// The Settings screen: units, language, look, loudness, how early and how else to be called, phones, copies; each change is kept at once.
import type { JSX } from 'preact';
import { about, changeSettings, live, settings } from '../client/store.ts';
import type { Priority, Settings } from '../client/types.ts';
import { LANGUAGES } from '../language/language.ts';
import { say } from '../language/say.ts';
import { priorityWord } from '../words/alarm-words.ts';
import { allowSound, playBurst } from '../sound/player.ts';
import { CallsPanel } from './calls-panel.tsx';
import { CopiesPanel } from './copies-panel.tsx';
import { LeadsPanel } from './leads-panel.tsx';
import { PhonesPanel } from './phones-panel.tsx';
import { SapUsualPanel } from './sap-usual-panel.tsx';
import { UnitsPanel } from './units-panel.tsx';

interface ChoiceProps<T extends string> {
  legend: string;
  value: T;
  options: readonly (readonly [T, string])[];
  choose: (value: T) => void;
}

function Choice<T extends string>({ legend, value, options, choose }: ChoiceProps<T>): JSX.Element {
  return (
    <fieldset class="choice">
      <legend>{legend}</legend>
      {options.map(([each, word]) => (
        <label key={each} class="check">
          <input type="radio" name={legend} checked={value === each} onChange={() => choose(each)} /> {word}
        </label>
      ))}
    </fieldset>
  );
}

const CALLS: readonly Priority[] = ['high', 'medium', 'low'];

async function tryCall(priority: Priority, loudness: Settings['loudness']): Promise<void> {
  if (await allowSound()) playBurst(priority, loudness);
}

export function SettingsView(): JSX.Element {
  const now = settings.value;
  return (
    <div class="page">
      <h1>{say('settings.title')}</h1>
      <UnitsPanel now={now} change={changeSettings} />
      <section class="panel fields level">
        <Choice
          legend={say('settings.language.title')}
          value={now.language}
          options={[['system', say('settings.language.system')], ...LANGUAGES.named]}
          choose={(language) => changeSettings({ language })}
        />
        <Choice
          legend={say('settings.look')}
          value={now.theme}
          options={[
            ['system', say('settings.as_machine')],
            ['light', say('settings.light')],
            ['dark', say('settings.dark')],
            ['contrast', say('settings.contrast')],
          ]}
          choose={(theme) => changeSettings({ theme })}
        />
        <Choice
          legend={say('settings.loudness')}
          value={now.loudness}
          options={[
            ['soft', say('settings.soft')],
            ['middle', say('settings.middle')],
            ['loud', say('settings.loud')],
          ]}
          choose={(loudness) => changeSettings({ loudness })}
        />
        <fieldset class="choice">
          <legend>{say('settings.try_calls')}</legend>
          <div class="row">
            {CALLS.map((priority) => (
              <button key={priority} type="button" onClick={() => void tryCall(priority, now.loudness)}>
                {say('settings.call', { word: priorityWord(priority) })}
              </button>
            ))}
          </div>
        </fieldset>
      </section>
      <LeadsPanel settings={now} now={live.value} change={changeSettings} />
      {/* Anew where the units change, for what is typed stands in them. */}
      <SapUsualPanel key={`${now.strength} ${now.temperature}`} settings={now} change={changeSettings} />
      <CallsPanel now={now} change={changeSettings} />
      <PhonesPanel />
      <CopiesPanel key={now.backup_folder} now={now} />
      {about.value !== null && <p class="hint">{say('settings.about', about.value)}</p>}
    </div>
  );
}
