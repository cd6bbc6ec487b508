// How long before something a person is called, each with what follows from it beside.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import type { Now, Settings } from '../client/types.ts';
import { pansUnder } from '../words/lead-words.ts';
import { LeadField, LEADS } from './lead-field.tsx';
import { SureOfFinish } from './sure-of-finish.tsx';

interface LeadsPanelProps {
  settings: Settings;
  /** The boil that runs, whose pans tell what a lead means today. */
  now: Now | null;
  change: (part: Partial<Settings>) => void;
}

export function LeadsPanel({ settings, now, change }: LeadsPanelProps): JSX.Element {
  const runs = now !== null && now.boil !== null && !now.ended;
  return (
    <section class="panel" aria-labelledby="when-called">
      <h2 id="when-called">{say('leads.title')}</h2>
      <div class="fields level">
        {LEADS.map((lead) => {
          const { under, own } = pansUnder(lead.name, now);
          return (
            <LeadField
              key={lead.name}
              id={`means-${lead.name}`}
              lead={lead}
              value={settings[lead.name]}
              settings={settings}
              pans={under}
              more={own}
              choose={(seconds) => seconds !== null && change({ [lead.name]: seconds })}
            />
          );
        })}
        <SureOfFinish now={settings} change={change} />
      </div>
      {runs && <p class="hint">{say('leads.holds')}</p>}
    </section>
  );
}
