// The choice of a pan's sap, with one sentence on what is known of it, and the shares of one that no kind has.
import type { JSX } from 'preact';
import { saps } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { sapKindName } from '../words/sap-words.ts';
import { NumberInput, Select } from './inputs.tsx';
import { chooseSap } from './sap-draft.ts';
import type { SapDraft, SapPart } from './sap-draft.ts';

const SHARES: [SapPart, MessageKey][] = [
  ['sucrose', 'boil.share.sucrose'],
  ['glucose', 'boil.share.glucose'],
  ['fructose', 'boil.share.fructose'],
  ['others', 'boil.share.others'],
];

interface SapFieldsProps {
  sap: SapDraft;
  set: (sap: SapDraft) => void;
}

export function SapFields({ sap, set }: SapFieldsProps): JSX.Element {
  const kinds = saps.value;
  const sentence = kinds.find(({ key }) => key === sap.kind)?.sentence;
  return (
    <>
      <Select
        label={say('boil.sap')}
        value={sap.kind}
        options={kinds.map(({ key }) => [key, sapKindName(key)] as const)}
        set={(kind) => set(chooseSap(sap, kind, kinds))}
      />
      {sentence !== undefined && <p class="hint field-note">{hostWords(sentence)}</p>}
      {sap.kind === 'other' &&
        SHARES.map(([part, label]) => (
          <NumberInput
            key={part}
            label={say(label)}
            unit="%"
            value={sap.shares[part]}
            set={(typed) => set({ ...sap, shares: { ...sap.shares, [part]: typed } })}
          />
        ))}
    </>
  );
}
