// When the chosen pan of the boil that runs is done and when it calls: tried out in words first, then taken over at once.
import { useRefusal } from '../shell/refusal.tsx';
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { boilDraft, problemInDraft, setupOf } from '../boil/boil-draft.ts';
import type { PanDraft } from '../boil/boil-draft.ts';
import { FinishFields, LeadFields, LeastDepthField } from '../boil/limit-fields.tsx';
import type { Standing } from '../boil/limit-fields.tsx';
import { saps, settings, tell } from '../client/store.ts';
import type { Advice, Header, Now } from '../client/types.ts';
import { smallestWords } from '../words/advice-words.ts';
import { panName } from '../words/pan-words.ts';
import { openLimits } from './open-limits.ts';

interface LimitsFormProps {
  header: Header;
  id: string;
  standing: Standing | null;
  close: () => void;
}

function LimitsForm({ header, id, standing, close }: LimitsFormProps): JSX.Element | null {
  const kept = boilDraft(header, settings.value, saps.value);
  const [typed, setTyped] = useState<PanDraft | null>(null);
  const { refuse, sentence } = useRefusal();
  const pan = typed ?? kept.pans.find((each) => each.before.id === id) ?? null;
  if (pan === null) return null;
  const fields = { pan, standing, change: setTyped };

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (pan === null) return;
    const wrong = problemInDraft({ ...kept, pans: [pan] }, settings.value);
    refuse(wrong);
    if (wrong !== null) return;
    const [changed] = setupOf({ ...kept, pans: [pan] }, settings.value, saps.value).pans ?? [];
    // The other pans as the boil has them now, which may have changed since the form was opened.
    const pans = (header.pans ?? []).map((each) => (each.id === id && changed !== undefined ? changed : each));
    if (await tell({ set: { pans } }, say('limits.changed', { pan: panName(header, id) }))) close();
  }

  return (
    <form onSubmit={(event) => void submit(event)} noValidate>
      <div class="fields">
        <FinishFields {...fields} />
        <LeastDepthField {...fields} />
        <LeadFields {...fields} />
      </div>
      <p class="hint">{say('limits.unseen')}</p>
      {sentence}
      <p class="row">
        <button type="submit" class="main-button">
          {say('limits.save', { pan: panName(header, id) })}
        </button>
        <button type="button" onClick={close}>
          {say('limits.leave')}
        </button>
      </p>
    </form>
  );
}

/** Folded away until somebody asks for it. */
export function PanLimits({ now, pan }: { now: Now; pan: string }): JSX.Element | null {
  useEffect(() => () => void (openLimits.value = null), []);
  if (now.header === null) return null;
  const reading = now.readings.find((each) => each.pan === pan) ?? null;
  const name = panName(now.header, pan);
  const advice: Advice | undefined = now.advice.find((each) => each.pan === pan);
  const smallest = advice?.smallestBatch ?? null;
  return (
    <section class="panel pan-limits" aria-label={say('limits.when', { pan: name })}>
      {openLimits.value === pan ? (
        <>
          <h2>{say('limits.when', { pan: name })}</h2>
          <LimitsForm
            header={now.header}
            id={pan}
            standing={reading === null ? null : { now, reading }}
            close={() => (openLimits.value = null)}
          />
        </>
      ) : (
        <button type="button" aria-expanded={false} onClick={() => (openLimits.value = pan)}>
          {say('limits.open', { pan: name })}
        </button>
      )}
      {smallest !== null && <p>{smallestWords(smallest, settings.value)}</p>}
    </section>
  );
}
