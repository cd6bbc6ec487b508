// When one pan is done and when it calls, each field with what follows from it in the pan as it stands.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { Now, Reading, Settings } from '../client/types.ts';
import { localDigits } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import { LeadField, LEADS } from '../settings/lead-field.tsx';
import { exactStrength, mmOf, typedNumber, unitSymbols } from '../words/amounts.ts';
import { finishSentences, leastDepthSentences } from '../words/limit-words.ts';
import { usualBrix, wantedFinish } from './boil-draft.ts';
import type { PanDraft } from './boil-draft.ts';
import { NumberInput, Select } from './inputs.tsx';

function finishes(pan: PanDraft): (readonly [PanDraft['finish'], string])[] {
  return [
    ['usual', say('boil.finish.usual', { strength: exactStrength(usualBrix(pan.sap.kind), settings.value) })],
    ['strength', say('boil.finish.strength')],
    ['rise', say('boil.finish.rise')],
  ];
}

/** The pan as it stands in the boil that runs. */
export interface Standing {
  now: Now;
  reading: Reading;
}

interface FieldsProps {
  pan: PanDraft;
  /** null where no boil runs. */
  standing: Standing | null;
  change: (pan: PanDraft) => void;
}

function Hints({ sentences }: { sentences: string[] }): JSX.Element {
  return (
    <div class="hint">
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}

function aboutFinish(pan: PanDraft, { now, reading }: Standing, shown: Settings): string[] {
  if (pan.finish !== 'usual' && typedNumber(pan.finishAt) === null) return [];
  const finish = wantedFinish(pan, shown) ?? { brix: usualBrix(pan.sap.kind) };
  return finishSentences(finish, reading, now, shown);
}

export function FinishFields({ pan, standing, change }: FieldsProps): JSX.Element {
  const units = unitSymbols(settings.value);
  return (
    <div class="lead-field">
      <Select
        label={say('boil.done_at')}
        value={pan.finish}
        options={finishes(pan)}
        set={(finish) => change({ ...pan, finish })}
      />
      {pan.finish !== 'usual' && (
        <NumberInput
          label={say('boil.that_is')}
          unit={pan.finish === 'strength' ? units.strength : units.temperature}
          value={pan.finishAt}
          set={(finishAt) => change({ ...pan, finishAt })}
        />
      )}
      {standing !== null && <Hints sentences={aboutFinish(pan, standing, settings.value)} />}
    </div>
  );
}

/** Where nothing is typed. */
const USUAL_DEPTH_MM = 15;

export function LeastDepthField({ pan, standing, change }: FieldsProps): JSX.Element {
  const shown = settings.value;
  const typed = typedNumber(pan.leastDepth);
  const mm = typed === null ? USUAL_DEPTH_MM : mmOf(typed, shown);
  return (
    <div class="lead-field">
      <NumberInput
        label={say('boil.never_shallower')}
        unit={unitSymbols(shown).length}
        hint={localDigits(shown.length === 'mm' ? '15' : '0.6')}
        value={pan.leastDepth}
        set={(leastDepth) => change({ ...pan, leastDepth })}
      />
      {standing !== null && <Hints sentences={leastDepthSentences(mm, standing.reading, shown)} />}
    </div>
  );
}

export function LeadFields({ pan, standing, change }: FieldsProps): JSX.Element {
  const of = standing === null ? [] : [{ header: standing.now.header, reading: standing.reading }];
  return (
    <>
      {LEADS.map((lead) => (
        <LeadField
          key={lead.name}
          id={`${lead.name}-${pan.before.id}`}
          lead={lead}
          value={pan.leads[lead.name]}
          usual={{
            seconds: standing?.now.header?.settings?.[lead.name] ?? settings.value[lead.name],
            word: say('boil.as_in_settings'),
          }}
          settings={settings.value}
          pans={of}
          choose={(seconds) => change({ ...pan, leads: { ...pan.leads, [lead.name]: seconds } })}
        />
      ))}
    </>
  );
}
