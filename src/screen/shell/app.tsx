// The frame around every view: first line, bands, the view itself, the alarms and the way between views.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { AlarmDock } from '../alarms/alarm-dock.tsx';
import { SoundCheck } from '../alarms/sound-check.tsx';
import { BoilForm } from '../boil/boil-form.tsx';
import { isLost, live, replay } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { HelpView } from '../help/help-view.tsx';
import { AskAtEnd } from '../notebook/ask-at-end.tsx';
import { CompareView } from '../compare/compare-view.tsx';
import { NoteDoor } from '../marks/note-door.tsx';
import { NotebookView } from '../notebook/notebook-view.tsx';
import { PansView } from '../pans/pans-view.tsx';
import { Welcome } from '../pans/welcome.tsx';
import { PlanView } from '../plan/plan-view.tsx';
import { SetupView } from '../onboarding/setup-view.tsx';
import { ProbesView } from '../probes/probes-view.tsx';
import { SettingsView } from '../settings/settings-view.tsx';
import { ReplayBand } from '../replay/replay-band.tsx';
import { ReplayView } from '../replay/replay-view.tsx';
import { SkipButton, useArrival, useFocusKept } from './arrival.tsx';
import { LostBand, Notices, PracticeBand, SaidLine } from './bands.tsx';
import { TuneView } from '../tune/tune-view.tsx';
import { FirstLine } from './first-line.tsx';
import { Nav } from './nav.tsx';
import { place, route } from './routes.ts';
import type { Route } from './routes.ts';
import { tellFootHeight, tellHeight } from './top-height.ts';

function LivePans({ now }: { now: Now }): JSX.Element {
  return now.mode === 'idle' ? <Welcome /> : <PansView key={now.boil} now={now} />;
}

function NoReplay(): JSX.Element {
  return (
    <div class="page">
      <h1>{say('nav.replay')}</h1>
      <p>{say('shell.no_replay')}</p>
    </div>
  );
}

function ViewOf({ at, now }: { at: Route; now: Now }): JSX.Element {
  switch (at) {
    case 'notebook':
      return <NotebookView />;
    case 'plan':
      return <PlanView now={now} />;
    case 'probes':
      return place.value[0] === 'setup' ? <SetupView now={now} /> : <ProbesView now={now} />;
    case 'settings':
      return <SettingsView />;
    case 'help':
      return <HelpView />;
    case 'start':
      return <BoilForm key="start" now={now} changing={false} />;
    case 'change':
      return <BoilForm key="change" now={now} changing={true} />;
    case 'replay':
      return replay.value === null ? <NoReplay /> : <ReplayView now={replay.value} />;
    case 'compare':
      return <CompareView />;
    case 'tune':
      return <TuneView />;
    case 'pans':
      return <LivePans now={now} />;
  }
}

export function App(): JSX.Element {
  const now = live.value;
  useArrival();
  useFocusKept();
  if (now === null) {
    return (
      <div class="app">
        <LostBand />
        <main class="page">
          <h1>Panwarden</h1>
          <p>{say('shell.looking')}</p>
        </main>
      </div>
    );
  }
  const replayed = route.value === 'replay' ? replay.value : null;
  const shown = replayed ?? now;
  // Once a practice boil is over, only its own pans are made up.
  const isMadeUp = shown.mode === 'practice' && (!shown.ended || route.value === 'pans');
  const look = shown.mode === 'practice' && !isMadeUp ? 'idle' : shown.mode;
  return (
    <div class={`app app-${look}${isLost.value ? ' app-lost' : ''}`}>
      <SkipButton />
      {/* First for Tab and for who hears the page, though it is drawn at the foot. */}
      <div class="bottom" ref={tellFootHeight}>
        <Nav />
        <AlarmDock now={now} aside={replayed !== null} />
        {route.value === 'pans' && <NoteDoor now={now} />}
      </div>
      <div class="top" ref={tellHeight}>
        <FirstLine now={shown} sound={now} />
        {isMadeUp && <PracticeBand now={shown} />}
        {replayed !== null && <ReplayBand now={replayed} />}
        <LostBand />
        <SaidLine />
      </div>
      <main>
        {route.value === 'pans' && <SoundCheck now={now} />}
        {route.value === 'pans' && <AskAtEnd now={now} />}
        <Notices now={shown} />
        <ViewOf at={route.value} now={now} />
      </main>
    </div>
  );
}
