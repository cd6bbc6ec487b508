// The choice of one lead, with what follows from it beside.
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { JSX } from 'preact';
import type { Settings } from '../client/types.ts';
import { leadSentences, leadTime } from '../words/lead-words.ts';
import type { LeadName, PanNow } from '../words/lead-words.ts';

export const LEADS: readonly { name: LeadName; label: MessageKey; minutes: readonly number[] }[] = [
  { name: 'near_finish_lead_s', label: 'leads.near', minutes: [3, 5, 10, 15, 20, 30] },
  { name: 'scorch_lead_s', label: 'leads.scorch', minutes: [1, 2, 4, 6, 10] },
  { name: 'low_level_lead_s', label: 'leads.low', minutes: [5, 10, 15, 20, 30] },
];

interface LeadFieldProps {
  /** Unlike that of any other field on the page. */
  id: string;
  lead: (typeof LEADS)[number];
  /** s; null where it goes by `usual`, s, which is then offered under `usualWord`. */
  value: number | null;
  usual?: { seconds: number; word: string };
  settings: Settings;
  /** The pans that it is about, as they stand; none where no boil runs. */
  pans: PanNow[];
  more?: string[];
  choose: (seconds: number | null) => void;
}

export function LeadField({ id, lead, value, usual, settings, pans, more = [], choose }: LeadFieldProps): JSX.Element {
  const seconds = value ?? usual?.seconds ?? 0;
  const minutes = [...new Set([...lead.minutes, ...(value === null ? [] : [value / 60])])].sort((a, b) => a - b);
  // Where no pan is looked at, what is left as it stands elsewhere has been told there.
  const isTold = value === null && pans.length === 0;
  const sentences = isTold ? [] : leadSentences(lead.name, seconds, settings, pans);
  return (
    <div class="lead-field">
      <label>
        <span>{say(lead.label)}</span>
        <select
          value={value === null ? '' : String(value)}
          aria-describedby={id}
          onChange={({ currentTarget: { value: chosen } }) => choose(chosen === '' ? null : Number(chosen))}
        >
          {usual !== undefined && (
            <option value="">{say('leads.usual', { word: usual.word, time: leadTime(usual.seconds) })}</option>
          )}
          {minutes.map((each) => (
            <option key={each} value={String(each * 60)}>
              {say('leads.before', { time: leadTime(each * 60) })}
            </option>
          ))}
        </select>
      </label>
      <div id={id} class="hint">
        {[...sentences, ...more].map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </div>
  );
}
