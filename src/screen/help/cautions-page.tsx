// All cautions on one page, each where it matters, with who decides and where it comes from.
import type { JSX } from 'preact';
import { chosenOfBoth } from '../../core/quantities/written-amounts.ts';
import { settings } from '../client/store.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';

const PARTS: readonly { title: MessageKey; cautions: readonly MessageKey[] }[] = [
  {
    title: 'help.caution.start',
    cautions: [
      'help.caution.stay',
      'help.caution.cannot',
      'help.caution.propane',
      'help.caution.carbon_monoxide',
      'help.caution.steam',
      'help.caution.children',
      'help.caution.electricity',
      'help.caution.fire',
      'help.caution.fire_fat',
      'help.caution.fire_wood',
    ],
  },
  {
    title: 'help.caution.finish',
    cautions: ['help.caution.instrument', 'help.caution.hot_sugar', 'help.caution.probe'],
  },
  {
    title: 'help.caution.bottling',
    cautions: ['help.caution.lead', 'help.caution.hot_fill', 'help.caution.mould', 'help.caution.sap'],
  },
  { title: 'help.caution.selling', cautions: ['help.caution.sell', 'help.caution.figures'] },
];

export function CautionsPage(): JSX.Element {
  return (
    <>
      <p>{say('help.cautions.text')}</p>
      {PARTS.map(({ title, cautions }) => (
        <section key={title} class="panel cautions">
          <h2>{say(title)}</h2>
          <ul>
            {cautions.map((caution) => (
              <li key={caution}>{chosenOfBoth(say(caution), settings.value)}</li>
            ))}
          </ul>
        </section>
      ))}
      <section class="panel">
        <h2>{say('help.cautions.sources')}</h2>
        <p>{say('help.cautions.sources.text')}</p>
      </section>
    </>
  );
}
