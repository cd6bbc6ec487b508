// What a person usually wants of maple and of birch: it fills in the form of each new boil.
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { boilDraft, leadsOf, problemInDraft, wantedFinish } from '../boil/boil-draft.ts';
import type { PanDraft } from '../boil/boil-draft.ts';
import { FinishFields } from '../boil/limit-fields.tsx';
import { saps } from '../client/store.ts';
import type { Pan, SapUsual, Settings } from '../client/types.ts';
import { LeadField, LEADS } from './lead-field.tsx';

type Sap = 'maple' | 'birch';
const NAMES: Record<Sap, MessageKey> = { maple: 'usual.maple', birch: 'usual.birch' };

/** A finish that is being typed is no finish yet; one that cannot be meant says why. */
function finishIn(pan: PanDraft, settings: Settings): { finish: Pan['finish']; problem: string | null } {
  const draft = { ...boilDraft(null, settings, saps.value), pans: [pan] };
  const problem = problemInDraft(draft, settings);
  return { finish: problem === null ? wantedFinish(pan, settings) : undefined, problem };
}

interface SapProps {
  sap: Sap;
  settings: Settings;
  change: (part: Partial<Settings>) => void;
}

function UsualOf({ sap, settings, change }: SapProps): JSX.Element {
  const usual = settings.per_sap[sap] ?? {};
  const id = `usual-${sap}`;
  const [pan, setPan] = useState<PanDraft>(
    () =>
      boilDraft({ pans: [{ id, name: say(NAMES[sap]), sap, finish: usual.finish }] }, settings, saps.value).pans[0]!,
  );
  // Nobody is told that a number is wrong before there is one, or after it was only emptied to be typed anew.
  const [isTyped, setIsTyped] = useState(false);
  const leads = leadsOf(usual);
  // Its name is said in the language of now, which may have been changed since.
  const { problem } = isTyped ? finishIn({ ...pan, name: say(NAMES[sap]) }, settings) : { problem: null };
  const keep = (next: SapUsual): void => change({ per_sap: { ...settings.per_sap, [sap]: next } });
  const typed = (next: PanDraft): void => {
    setPan(next);
    setIsTyped(next.finishAt.trim() !== '' || (isTyped && next.finish === pan.finish));
    const { finish, problem: wrong } = finishIn(next, settings);
    if (wrong === null) keep({ ...usual, finish: finish as SapUsual['finish'] });
  };
  return (
    <fieldset class="pan-fields">
      <legend>{say(NAMES[sap])}</legend>
      <div class="fields level">
        <div class="lead-field">
          <FinishFields pan={pan} standing={null} change={typed} />
          {problem !== null && <p class="problem">✕ {problem}</p>}
        </div>
        {LEADS.map((lead) => (
          <LeadField
            key={lead.name}
            id={`${lead.name}-${id}`}
            lead={lead}
            value={leads[lead.name]}
            usual={{ seconds: settings[lead.name], word: say('usual.as_above') }}
            settings={settings}
            pans={[]}
            choose={(seconds) => keep({ ...usual, [lead.name]: seconds ?? undefined })}
          />
        ))}
      </div>
    </fieldset>
  );
}

export function SapUsualPanel({ settings, change }: Omit<SapProps, 'sap'>): JSX.Element {
  return (
    <section class="panel" aria-labelledby="usual-of-sap">
      <h2 id="usual-of-sap">{say('usual.title')}</h2>
      <p class="hint">{say('usual.text')}</p>
      <UsualOf sap="maple" settings={settings} change={change} />
      <UsualOf sap="birch" settings={settings} change={change} />
    </section>
  );
}
