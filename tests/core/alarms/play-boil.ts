// Plays a story of a whole boil: two pots of Tarn Hollow (invented), a board that sends lines, marks and answers, through the real fold.
import type { AlarmTransition } from '../../../src/core/alarms/alarm.ts';
import * as engine from '../../../src/core/alarms/engine.ts';
import type { Entry, HeaderPatch, Mark } from '../../../src/core/boil/entries.ts';
import { advance, applyEntry, type BoilState, startBoil } from '../../../src/core/boil/fold.ts';
import { tarnHollow, tools } from '../boil/tarn-hollow.ts';
import { picture } from './picture.ts';
import { answerOf } from './play-pair.ts';
import type { Story } from './read-stories.ts';

/** A line that the board sends once a second, until a second; `101.00..103.00` in it rises in step on the way. */
interface Stream {
  line: string;
  from: number;
  until: number;
}

function lineAt({ line, from, until }: Stream, second: number): string {
  return line.replace(/([\d.]+)\.\.([\d.]+)/u, (_, a: string, b: string) => {
    const share = (second - from) / (until - from);
    return (Number(a) + share * (Number(b) - Number(a))).toFixed(2);
  });
}

/** The picture after each step; each call is also told to `hear`. */
export function playBoil(story: Story, hear: (call: AlarmTransition) => void = () => undefined): string[][] {
  let state = startBoil(tarnHollow());
  let streams: Stream[] = [];
  let second = -1;
  const told: AlarmTransition[] = [];
  const apply = (entry: Entry): void => {
    state = applyEntry(state, entry, tools);
    told.push(...state.fresh);
  };
  const send = (): void => {
    streams = streams.filter(({ until }) => second < until);
    for (const stream of streams) apply({ t: second * 1000, port: 'A', line: lineAt(stream, second) });
  };
  return story.steps.map((step) => {
    told.length = 0;
    while (second < step.second - 1) {
      second += 1;
      send();
    }
    const isNew = second < step.second;
    second = step.second;
    const stream = /^(T\d=.+) until (\d+)$/u.exec(step.input);
    if (stream !== null) streams.push({ line: stream[1]!, from: second, until: Number(stream[2]) });
    else if (step.input !== '') apply(entryOf(step.input, second * 1000));
    if (isNew) send();
    state = advance(state, second * 1000);
    told.push(...state.fresh);
    told.forEach(hear);
    return seen(state, second * 1000, told);
  });
}

const seen = (state: BoilState, t: number, told: AlarmTransition[]): string[] => picture(engine, state.book, t, told);

/** An answer as in every story, or `port A lost`, `mark JSON`, `set JSON`, `called JSON`, `gap SECONDS`. */
function entryOf(input: string, t: number): Entry {
  const answer = answerOf(input);
  if (answer !== null) return { t, answer };
  const [what, ...words] = input.split(' ');
  const rest = words.join(' ');
  if (what === 'port') return { t, port: words[0]!, state: words[1] as 'open' | 'lost' };
  if (what === 'gap') return { t, run: 'gap', seconds: Number(rest) };
  if (what === 'mark') return { t, mark: JSON.parse(rest) as Mark };
  if (what === 'set') return { t, set: JSON.parse(rest) as HeaderPatch };
  if (what === 'called') return { t, called: JSON.parse(rest) as Extract<Entry, { called: unknown }>['called'] };
  throw new Error(`not an input: ${input}`);
}
