// The choice of a pan's sap, with one sentence on what is known of it, and the shares of one that no kind has.
import type { JSX } from 'preact';
import { saps } from '../client/store.ts';
import { NumberInput, Select } from './inputs.tsx';
import { chooseSap } from './sap-draft.ts';
import type { SapDraft, SapPart } from './sap-draft.ts';

const SHARES: [SapPart, string][] = [
  ['sucrose', 'Sucrose, of the sugar'],
  ['glucose', 'Glucose, of the sugar'],
  ['fructose', 'Fructose, of the sugar'],
  ['others', 'Acids and minerals, of all that is dissolved'],
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
        label="Sap"
        value={sap.kind}
        options={kinds.map(({ key, name }) => [key, name] as const)}
        set={(kind) => set(chooseSap(sap, kind, kinds))}
      />
      {sentence !== undefined && <p class="hint field-note">{sentence}</p>}
      {sap.kind === 'other' &&
        SHARES.map(([part, label]) => (
          <NumberInput
            key={part}
            label={label}
            unit="%"
            value={sap.shares[part]}
            set={(typed) => set({ ...sap, shares: { ...sap.shares, [part]: typed } })}
          />
        ))}
    </>
  );
}
