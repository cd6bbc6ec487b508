// What each number on a pan means, in one paragraph each.
import type { JSX } from 'preact';
import { chosenOfBoth } from '../../core/quantities/written-amounts.ts';
import { settings } from '../client/store.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';

const NUMBERS: readonly (readonly [title: MessageKey, text: MessageKey])[] = [
  ['help.number.water', 'help.number.water.text'],
  ['help.number.rise', 'help.number.rise.text'],
  ['help.number.strength', 'help.number.strength.text'],
  ['help.number.rate', 'help.number.rate.text'],
  ['help.number.finish', 'help.number.finish.text'],
  ['help.number.burns', 'help.number.burns.text'],
  ['help.number.litres', 'help.number.litres.text'],
  ['help.number.top_up', 'help.number.top_up.text'],
  ['help.number.range', 'help.number.range.text'],
  ['help.number.unknown', 'help.number.unknown.text'],
];

export function NumbersPage(): JSX.Element {
  return (
    <>
      <p>{say('help.numbers.text')}</p>
      <dl class="panel help-numbers">
        {NUMBERS.map(([title, text]) => (
          <div key={title}>
            <dt>{say(title)}</dt>
            <dd>{chosenOfBoth(say(text), settings.value)}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
