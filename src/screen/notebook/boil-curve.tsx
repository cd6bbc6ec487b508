// The curve of a kept boil on its page, with its marks and alarms: a replay of it that stands at its end.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { AlarmHistory, LookBackPanel } from '../alarms/alarm-history.tsx';
import { usePageWord, withPageWords } from '../alarms/page-word.ts';
import { PanChart } from '../charts/pan-chart.tsx';
import { closeReplay, replay, tell } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { openReplay } from '../replay/replay-control.ts';
import { route } from '../shell/routes.ts';
import { MarkLog } from '../marks/mark-log.tsx';
import { say } from '../language/say.ts';
import { stillReadWords } from '../words/replay-words.ts';
import { DAY_MS } from '../../core/quantities/time.ts';

/** Beyond any boil: the host goes to its end. */
const END = 10 * 366 * DAY_MS;

/** What was noted and called, and a person's word on the calls. */
function Behind({ now }: { now: Now }): JSX.Element {
  const page = usePageWord(now);
  const shown = withPageWords(now, page?.noUse ?? []);
  const stillRead = stillReadWords(now);
  // Calls that come later in the boil would be told as none.
  if (stillRead !== null) {
    return (
      <section class="panel" aria-busy={true}>
        <p>{stillRead}</p>
      </section>
    );
  }
  return (
    <>
      <MarkLog now={now} canTakeBack={false} />
      <AlarmHistory now={shown} canSay={false} page={page} open={(at) => void openReplay(now.boil ?? '', at)} />
      <LookBackPanel now={shown} />
    </>
  );
}

/** Opens a replay of its own, and closes it again with the page. */
export function BoilCurve({ boil, pans }: { boil: string; pans: { id: string; name: string }[] }): JSX.Element | null {
  const [pan, setPan] = useState(pans[0]?.id ?? null);
  useEffect(() => {
    // At once: what was sent after it would steer the replay that somebody has opened meanwhile.
    void tell({ replay: { boil, at: END } });
    // Whoever goes to the replay itself takes it along.
    return () => void (route.value === 'replay' ? null : closeReplay());
  }, [boil]);
  const now = replay.value;
  if (now === null || now.boil !== boil || pan === null) return <p>{say('notebook.drawing')}</p>;
  const shown = now.readings.some((reading) => reading.pan === pan) ? pan : (now.readings[0]?.pan ?? null);
  return (
    <>
      {pans.length > 1 && (
        <p class="row" role="group" aria-label={say('notebook.curve_of')}>
          {pans.map(({ id, name }) => (
            <button key={id} type="button" aria-pressed={id === pan} onClick={() => setPan(id)}>
              {name}
            </button>
          ))}
        </p>
      )}
      {shown !== null && <PanChart key={`${boil} ${shown}`} now={now} pan={shown} isOver />}
      <Behind now={now} />
    </>
  );
}
