// All pans of a boil, live or replayed: the cards, the chosen pan's chart, and what was noted.
import { say, sayDrawn } from '../language/say.ts';
import type { ComponentChildren, JSX } from 'preact';
import { EndBoil } from '../boil/end-boil.tsx';
import { PanChart } from '../charts/pan-chart.tsx';
import { notedStrength, plannedStrength } from '../../protocol/planned-strength.ts';
import { settings } from '../client/store.ts';
import type { Now, Reading } from '../client/types.ts';
import { AlarmHistory, LookBackPanel } from '../alarms/alarm-history.tsx';
import { AlarmRow } from '../alarms/alarm-row.tsx';
import { usePageWord, withPageWords } from '../alarms/page-word.ts';
import type { PageWord } from '../alarms/page-word.ts';
import { MarkLog } from '../marks/mark-log.tsx';
import { FormKeys, MarkPanel } from '../marks/mark-panel.tsx';
import { openForm } from '../marks/open-form.ts';
import { ExplainPanel } from '../explain/explain-panel.tsx';
import { Tell } from '../explain/tell.tsx';
import { seek } from '../replay/replay-control.ts';
import { PanLimits } from '../settings/pan-limits.tsx';
import { useKey } from '../shell/keys.ts';
import { alarmKey, inOrder } from '../words/alarm-words.ts';
import { isAllOff } from '../words/pan-words.ts';
import { asAtItsEnd } from '../words/clock.ts';
import { noWater, waterWords } from '../words/water-words.ts';
import { PanCard } from './pan-card.tsx';
import { isBig } from './big-view.tsx';
import { PracticeSyrup } from './practice-syrup.tsx';
import { PracticeButton } from './practice-button.tsx';
import { selectPan, selectedPan } from './selected-pan.ts';
import { TellWater } from './tell-water.tsx';

const MOST_LARGE_CARDS = 4;

function canMarkIn(now: Now): boolean {
  return now.view === 'live' && !now.ended;
}

function Card({ now, reading, place }: { now: Now; reading: Reading; place: number }): JSX.Element {
  const letter = String(place + 1);
  useKey(letter, () => selectPan(reading.pan));
  return (
    <PanCard
      now={now}
      reading={reading}
      limits={
        now.limits.find((each) => each.pan === reading.pan) ?? { pan: reading.pan, finish_c: null, scorch_c: null }
      }
      alarms={now.alarms.filter((alarm) => alarm.pan === reading.pan)}
      selected={selectedPan(now) === reading.pan}
      canMark={canMarkIn(now)}
      letter={letter}
      select={() => selectPan(reading.pan)}
    />
  );
}

function ReplayedAlarms({ now }: { now: Now }): JSX.Element | null {
  if (now.alarms.length === 0) return null;
  return (
    <section class="panel" aria-label={say('pans.alarms_then')}>
      <h2>{say('pans.alarms_then_short')}</h2>
      <ul class="alarms">
        {inOrder(now.alarms).map((alarm) => (
          <AlarmRow key={alarmKey(alarm)} alarm={alarm} now={now} full={false} canAnswer={false} />
        ))}
      </ul>
    </section>
  );
}

function BoilLine({ now }: { now: Now }): JSX.Element {
  const water = waterWords(now, settings.value);
  return (
    <div class="boil-line">
      <p>
        <b>{now.header?.name ?? say('pans.this_boil')}</b>
        {say('pans.water_boils')}{' '}
        {water === null ? (
          noWater(now)
        ) : (
          <Tell pan={null} what="water">
            {water}
          </Tell>
        )}
        {now.kept !== null && say('pans.lines_kept', { lines: now.kept })}
      </p>
      {now.view === 'live' && !now.ended && (
        <p class="boil-acts">
          <a class="button" href="#/change">
            {say('pans.change')}
          </a>{' '}
          {/* The practice band has its own way to end it, and so has what stands above pans that are all off. */}
          {now.mode !== 'practice' && !isAllOff(now) && <EndBoil />}
        </p>
      )}
    </div>
  );
}

/** Once no pan is on the fire, what is next is to end the boil: offered where it is looked for. */
function AllOff(): JSX.Element {
  return (
    <section class="panel boil-line" aria-label={say('pans.all_off')}>
      <p>
        <b>{say('pans.all_off')}</b> {say('pans.all_off_end')}
      </p>
      <p class="boil-acts">
        <EndBoil />
      </p>
    </section>
  );
}

function AfterBoil({ now }: { now: Now }): JSX.Element {
  return (
    <section class="panel boil-line" aria-label={say('pans.is_over')}>
      <p>
        {sayDrawn('pans.over_kept', {
          name: now.header?.name ?? say('pans.this_boil'),
          b: (words) => <b>{words}</b>,
        })}
        {now.mode === 'practice' && say('pans.practice.after')}
      </p>
      {now.mode === 'practice' && now.boil !== null && <PracticeSyrup boil={now.boil} />}
      <p class="boil-acts">
        <a class="button" href="#/notebook">
          {say('pans.see_notebook')}
        </a>
        <a class="button" href="#/start">
          {say('pans.start')}
        </a>
        <PracticeButton class="button" />
      </p>
    </section>
  );
}

/** What somebody was typing when the boil ended stays before their eyes until they put it away. */
const isFillingIn = ({ view, ended }: Now): boolean => view === 'live' && ended && openForm.value !== null;

interface BeneathProps {
  now: Now;
  pan: string | null;
  canMark: boolean;
  page: PageWord | null;
}

/** What stands under the cards: marks, chart and log. */
function Beneath({ now, pan, canMark, page }: BeneathProps): JSX.Element {
  return (
    <>
      {pan !== null && (canMark || isFillingIn(now)) && <MarkPanel key={now.boil ?? ''} now={now} pan={pan} />}
      {pan !== null && <PanChart key={`${now.view} ${now.boil ?? ''} ${pan}`} now={now} pan={pan} />}
      {pan !== null && canMark && <PanLimits key={`limits ${pan}`} now={now} pan={pan} />}
      {now.view === 'replay' && <ReplayedAlarms now={now} />}
      <MarkLog now={now} canTakeBack={canMark} />
      <AlarmHistory
        now={now}
        canSay={canMark}
        page={page}
        open={now.view === 'replay' ? (at) => seek(now, at) : null}
      />
      {now.view === 'replay' && <LookBackPanel now={now} />}
      <BoilLine now={now} />
    </>
  );
}

/** Whether its card shows a strength, seen or told. */
const showsStrength = (now: Now, reading: Reading): boolean =>
  (reading.brix ?? plannedStrength(now, reading) ?? notedStrength(now, reading)) !== null;

/** What the unit of a strength is, once under the cards that show one: who boils for the first time meets it there. */
function StrengthUnit({ now }: { now: Now }): JSX.Element | null {
  if (settings.value.strength !== 'brix' || !now.readings.some((reading) => showsStrength(now, reading))) return null;
  return <p class="hint">{say('pans.brix_is')}</p>;
}

interface PansViewProps {
  now: Now;
  /** What stands between the cards and the chart. */
  children?: ComponentChildren;
}

export function PansView({ now: told, children }: PansViewProps): JSX.Element {
  const heard = asAtItsEnd(told);
  const page = usePageWord(heard);
  const now = withPageWords(heard, page?.noUse ?? []);
  const pan = selectedPan(now);
  const canMark = canMarkIn(now);
  const many = now.readings.length > MOST_LARGE_CARDS ? ' cards-many' : '';
  const size = isBig.value ? 'cards cards-big' : `cards${many}`;
  return (
    <div class="pans">
      <h1 class="unseen">{say('pans.title')}</h1>
      {isAllOff(now) && !isBig.value && <AllOff />}
      {now.view === 'live' && now.ended && (
        <>
          <AfterBoil now={now} />
          <LookBackPanel now={now} />
        </>
      )}
      {canMark && pan !== null && !isBig.value && !isAllOff(now) && <TellWater now={now} pan={pan} />}
      <section class={size} aria-label={say('pans.title')}>
        {now.readings.map((reading, place) => (
          <Card key={reading.pan} now={now} reading={reading} place={place} />
        ))}
      </section>
      {!isBig.value && <StrengthUnit now={now} />}
      {isBig.value && pan !== null && canMark && now.header !== null && <FormKeys header={now.header} />}
      {!isBig.value && children}
      {!isBig.value && <Beneath now={now} pan={pan} canMark={canMark} page={page} />}
      <ExplainPanel now={now} canMark={canMark} />
    </div>
  );
}
