// The guide for a first boil: what to do in which order, each step with a picture of the screen that the tests took.
import type { JSX } from 'preact';
import { language } from '../language/language.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';

/** The pictures that `npm run pictures` takes, by language and name. */
const PICTURES = import.meta.glob<string>('./pictures/*/*.png', { eager: true, import: 'default', query: '?url' });

interface Step {
  title: MessageKey;
  text: MessageKey;
  picture: string | null;
  /** What the picture shows, for who cannot see it. */
  shows: MessageKey | null;
}

const STEPS: readonly Step[] = [
  { title: 'help.step.practise', text: 'help.step.practise.text', picture: 'pans', shows: 'help.step.practise.shows' },
  { title: 'help.step.call', text: 'help.step.call.text', picture: 'call', shows: 'help.step.call.shows' },
  { title: 'help.step.probes', text: 'help.step.probes.text', picture: 'probes', shows: 'help.step.probes.shows' },
  { title: 'help.step.plan', text: 'help.step.plan.text', picture: 'plan', shows: 'help.step.plan.shows' },
  { title: 'help.step.start', text: 'help.step.start.text', picture: 'start', shows: 'help.step.start.shows' },
  { title: 'help.step.water', text: 'help.step.water.text', picture: null, shows: null },
  { title: 'help.step.notes', text: 'help.step.notes.text', picture: 'note', shows: 'help.step.notes.shows' },
  { title: 'help.step.finish', text: 'help.step.finish.text', picture: null, shows: null },
  { title: 'help.step.after', text: 'help.step.after.text', picture: 'notebook', shows: 'help.step.after.shows' },
];

export function FirstBoil(): JSX.Element {
  return (
    <>
      <p>{say('help.first_boil.text')}</p>
      <p class="hint">{say('help.pictures')}</p>
      <ol class="help-steps">
        {STEPS.map(({ title, text, picture, shows }) => {
          const source =
            picture === null
              ? undefined
              : (PICTURES[`./pictures/${language.value}/${picture}.png`] ?? PICTURES[`./pictures/en/${picture}.png`]);
          return (
            <li key={title} class="panel">
              <h2>{say(title)}</h2>
              <p>{say(text)}</p>
              {source !== undefined && shows !== null && (
                <img src={source} alt={say(shows)} width={1366} height={768} loading="lazy" />
              )}
            </li>
          );
        })}
      </ol>
    </>
  );
}
