// The row of pans in a note's form: which pan it is for is seen before a press notes it, and changed without leaving it.
import type { JSX } from 'preact';
import { AlarmShape } from '../alarms/alarm-shape.tsx';
import type { Now } from '../client/types.ts';
import { say } from '../language/say.ts';
import { selectPan } from '../pans/selected-pan.ts';
import { panName } from '../words/pan-words.ts';
import { panCall } from './pan-call.ts';

interface PanChoiceProps {
  now: Now;
  /** The pan that the note is for. */
  pan: string;
  /** Called once another was pressed. */
  chosen: () => void;
}

/** Nothing where there is one pan. Their keys are those of the cards, which stand above. */
export function PanChoice({ now, pan, chosen }: PanChoiceProps): JSX.Element | null {
  if (now.readings.length < 2) return null;
  return (
    <div class="pan-choice" role="group" aria-label={say('marks.which_pan')}>
      {now.readings.map((each, place) => {
        const call = panCall(now, each.pan);
        const act = (): void => {
          selectPan(each.pan);
          chosen();
        };
        return (
          <button
            key={each.pan}
            type="button"
            aria-pressed={each.pan === pan}
            aria-keyshortcuts={String(place + 1)}
            onClick={act}
          >
            <kbd aria-hidden="true">{place + 1}</kbd> <b>{panName(now.header, each.pan)}</b>
            {call !== null && (
              <span class="pan-choice-call">
                <AlarmShape priority={call.priority} flashes={false} size={22} /> {call.words}
              </span>
            )}
          </button>
        );
      })}
    </div>
  );
}
