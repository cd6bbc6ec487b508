// How long before something a person is called, each with what follows from it beside.
import type { JSX } from 'preact';
import type { Now, Settings } from '../client/types.ts';
import { leadSentences, type LeadName } from '../words/lead-words.ts';

interface Lead {
  name: LeadName;
  label: string;
  /** Minutes. */
  options: readonly number[];
}

const LEADS: readonly Lead[] = [
  { name: 'near_finish_lead_s', label: 'Call me when a pan is nearly done', options: [3, 5, 10, 15, 20, 30] },
  { name: 'scorch_lead_s', label: 'Call me when a pan would burn', options: [1, 2, 4, 6, 10] },
  { name: 'low_level_lead_s', label: 'Call me when a pan gets shallow', options: [5, 10, 15, 20, 30] },
];

interface LeadsPanelProps {
  settings: Settings;
  /** The boil that runs, whose pans tell what a lead means today. */
  now: Now | null;
  change: (part: Partial<Settings>) => void;
}

function LeadField({ lead, settings, now, change }: LeadsPanelProps & { lead: Lead }): JSX.Element {
  const seconds = settings[lead.name];
  const minutes = [...new Set([...lead.options, seconds / 60])].sort((a, b) => a - b);
  return (
    <div>
      <label>
        <span>{lead.label}</span>
        <select
          value={String(seconds)}
          aria-describedby={`means-${lead.name}`}
          onChange={(event) => change({ [lead.name]: Number(event.currentTarget.value) })}
        >
          {minutes.map((each) => (
            <option key={each} value={String(each * 60)}>
              {each} min before
            </option>
          ))}
        </select>
      </label>
      <div id={`means-${lead.name}`} class="hint">
        {leadSentences(lead.name, settings, now).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </div>
  );
}

export function LeadsPanel(props: LeadsPanelProps): JSX.Element {
  const runs = props.now !== null && props.now.boil !== null && !props.now.ended;
  return (
    <section class="panel" aria-labelledby="when-called">
      <h2 id="when-called">When you are called</h2>
      <div class="fields">
        {LEADS.map((lead) => (
          <LeadField key={lead.name} lead={lead} {...props} />
        ))}
      </div>
      {runs && (
        <p class="hint">
          A change holds for all pans of the boil that is running, at once. A call that you have not seen yet stays
          until you have.
        </p>
      )}
    </section>
  );
}
