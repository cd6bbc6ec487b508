// What was noted, the latest first, each of which can be taken back.
import type { JSX } from 'preact';
import { settings, tell } from '../client/store.ts';
import type { MarkView, Now } from '../client/types.ts';
import { timeOfDay } from '../words/clock.ts';
import { markWords } from '../words/mark-words.ts';
import { FirstFew } from '../shell/first-few.tsx';

const SHOWN_FIRST = 8;

function takeBack(id: string, what: string): void {
  void tell({ mark: { kind: 'withdraw', id } }, `${what}: taken back.`);
}

function LogRow({ each, now, canTakeBack }: { each: MarkView; now: Now; canTakeBack: boolean }): JSX.Element {
  const { id } = each.mark;
  const what = markWords(each.mark, now.header, settings.value);
  return (
    <li class={each.withdrawn ? 'log-withdrawn' : undefined}>
      <time>{timeOfDay(now, each.at)}</time>
      <span>{what}</span>
      {each.withdrawn && <em>taken back</em>}
      {each.questioned && !each.withdrawn && <em>left out: it can hardly be meant</em>}
      {canTakeBack && !each.withdrawn && id !== undefined && (
        <button type="button" onClick={() => takeBack(id, what)}>
          Take back
        </button>
      )}
    </li>
  );
}

export function MarkLog({ now, canTakeBack }: { now: Now; canTakeBack: boolean }): JSX.Element {
  const latestFirst = now.marks.filter((each) => each.mark.kind !== 'withdraw').reverse();
  return (
    <section class="panel log" aria-label="What was noted">
      <h2>Noted so far</h2>
      {latestFirst.length === 0 && <p>Nothing yet.</p>}
      <FirstFew
        items={latestFirst}
        shown={SHOWN_FIRST}
        row={(each, place) => (
          <LogRow key={each.mark.id ?? `${each.t} ${place}`} each={each} now={now} canTakeBack={canTakeBack} />
        )}
      />
    </section>
  );
}
