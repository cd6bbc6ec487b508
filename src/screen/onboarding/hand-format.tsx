// A format set by hand: what parts the columns, what the decimal mark is, what each is called; or a pattern.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Labelled, Select, saidOptions } from '../boil/inputs.tsx';
import { ask } from '../client/store.ts';
import type { PortFormat, Tried } from '../client/types.ts';
import { triedWords } from '../words/setup-words.ts';
import { confirmFormat } from './setup-draft.ts';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';

const KINDS = [
  ['pairs', 'onboarding.kind.pairs'],
  ['columns', 'onboarding.kind.columns'],
  ['pattern', 'onboarding.kind.pattern'],
] as const;
const SEPARATORS = [
  [',', 'onboarding.comma'],
  [';', 'onboarding.semicolon'],
  ['\t', 'onboarding.tab'],
  [' ', 'onboarding.blank'],
] as const;
const DECIMALS = [
  ['.', 'onboarding.point'],
  [',', 'onboarding.comma'],
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
  /** There is something proposed to go back to. */
  isProposed: boolean;
  close: () => void;
}

export function HandFormat({ lines, baud, isProposed, close }: Props): JSX.Element {
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
      <legend>{say('onboarding.by_hand')}</legend>
      <div class="fields">
        <Select label={say('onboarding.each_line')} value={typed.kind} options={saidOptions(KINDS)} set={set('kind')} />
        {typed.kind === 'columns' && (
          <>
            <Select
              label={say('onboarding.parted_by')}
              value={typed.separator}
              options={saidOptions<string>(SEPARATORS)}
              set={set('separator')}
            />
            <Select
              label={say('onboarding.decimal_mark')}
              value={typed.decimal}
              options={saidOptions<string>(DECIMALS)}
              set={set('decimal')}
            />
            <Labelled label={say('onboarding.names')}>
              <input
                class="wide"
                value={typed.channels}
                onInput={(event) => set('channels')(event.currentTarget.value)}
              />
            </Labelled>
          </>
        )}
        {typed.kind === 'pattern' && (
          <Labelled
            label={say('onboarding.pattern', {
              channel: '(?P<channel>…)',
              value: '(?P<value>…)',
              unit: '(?P<unit>…)',
            })}
          >
            <input class="wide" value={typed.pattern} onInput={(event) => set('pattern')(event.currentTarget.value)} />
          </Labelled>
        )}
      </div>
      <p role="status">{typeof tried === 'string' ? `✕ ${hostWords(tried)}` : triedWords(tried, format === null)}</p>
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
          {say('onboarding.read_so')}
        </button>
        <button type="button" onClick={close}>
          {say(isProposed ? 'onboarding.back_to_proposed' : 'onboarding.back')}
        </button>
      </p>
    </fieldset>
  );
}
