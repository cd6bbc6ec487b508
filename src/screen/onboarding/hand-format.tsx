// A format set by hand: what parts the columns, what the decimal mark is, what each is called; or a pattern.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Labelled, Select } from '../boil/inputs.tsx';
import { ask } from '../client/store.ts';
import type { PortFormat, Tried } from '../client/types.ts';
import { triedWords } from '../words/setup-words.ts';
import { confirmFormat } from './setup-draft.ts';

const KINDS = [
  ['pairs', 'name and value, like T1=98.2'],
  ['columns', 'columns'],
  ['pattern', 'a pattern (RE2)'],
] as const;
const SEPARATORS = [
  [',', 'comma'],
  [';', 'semicolon'],
  ['\t', 'tab'],
  [' ', 'blank'],
] as const;
const DECIMALS = [
  ['.', 'point'],
  [',', 'comma'],
] as const;

interface Typed {
  kind: 'pairs' | 'columns' | 'pattern';
  separator: string;
  decimal: string;
  channels: string;
  pattern: string;
}

const START: Typed = {
  kind: 'columns',
  separator: ',',
  decimal: '.',
  channels: 'T1, T2',
  pattern: 'CH(?P<channel>\\d): *(?P<value>-?[0-9.]+) *(?P<unit>[CFK])?',
};

/** null while what is typed is no format. */
function formatOf({ kind, separator, decimal, channels, pattern }: Typed): PortFormat | null {
  if (kind === 'pairs') return { kind };
  if (kind === 'pattern') return pattern.trim() === '' ? null : { kind, pattern };
  const names = channels.split(',').map((name) => name.trim());
  if (separator === decimal || names.every((name) => name === '')) return null;
  return { kind, separator, decimal, channels: names };
}

function useTried(format: PortFormat | null, lines: readonly string[]): Tried | null | string {
  const [tried, setTried] = useState<Tried | null | string>(null);
  const shown = lines.slice(-6);
  const key = JSON.stringify([format, lines.length === 0]);
  useEffect(() => {
    if (format === null || shown.length === 0) return setTried(null);
    ask({ try_format: { format, lines: shown } }).then(
      (data) => setTried(data as Tried),
      (error: Error) => setTried(error.message),
    );
  }, [key]);
  return tried;
}

interface Props {
  lines: readonly string[];
  baud: number | null;
  close: () => void;
}

export function HandFormat({ lines, baud, close }: Props): JSX.Element {
  const [typed, setTyped] = useState<Typed>(START);
  const set =
    <K extends keyof Typed>(field: K) =>
    (value: Typed[K]): void =>
      setTyped({ ...typed, [field]: value });
  const format = formatOf(typed);
  const tried = useTried(format, lines);
  const channels = [
    ...new Set(
      typeof tried === 'string'
        ? []
        : (tried?.lines ?? []).flatMap(({ readings }) => readings.map((one) => one.channel)),
    ),
  ];
  return (
    <fieldset class="hand-format">
      <legend>Set by hand</legend>
      <div class="fields">
        <Select label="Each line holds" value={typed.kind} options={KINDS} set={set('kind')} />
        {typed.kind === 'columns' && (
          <>
            <Select label="Parted by" value={typed.separator} options={SEPARATORS} set={set('separator')} />
            <Select label="Decimal mark" value={typed.decimal} options={DECIMALS} set={set('decimal')} />
            <Labelled label="Names in order, with a comma between; nothing for what is no probe">
              <input
                class="wide"
                value={typed.channels}
                onInput={(event) => set('channels')(event.currentTarget.value)}
              />
            </Labelled>
          </>
        )}
        {typed.kind === 'pattern' && (
          <Labelled label="Pattern with (?P<channel>…), (?P<value>…) and perhaps (?P<unit>…)">
            <input class="wide" value={typed.pattern} onInput={(event) => set('pattern')(event.currentTarget.value)} />
          </Labelled>
        )}
      </div>
      <p role="status">{typeof tried === 'string' ? `✕ ${tried}` : triedWords(tried, format === null)}</p>
      <p class="row">
        <button
          type="button"
          class="main-button"
          disabled={format === null || channels.length === 0}
          onClick={() =>
            format !== null &&
            void confirmFormat(
              format,
              baud,
              channels.map((channel) => ({ channel, sensor: null })),
            )
          }
        >
          Read them like this
        </button>
        <button type="button" onClick={close}>
          Back to what was proposed
        </button>
      </p>
    </fieldset>
  );
}
