// A past boil to look back on: the whole of it as a strip, what steers it, the pans as they stood, and what came of what was said.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Now } from '../client/types.ts';
import { PansView } from '../pans/pans-view.tsx';
import { selectedPan } from '../pans/selected-pan.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { ChoicesPanel } from './choices-panel.tsx';
import { KnownPanel } from './known-panel.tsx';
import { ReplayControls } from './replay-controls.tsx';
import type { StripLine } from './strip-shapes.ts';
import { WholeStrip } from './whole-strip.tsx';
import { say } from '../language/say.ts';

const OTHER: Record<StripLine, StripLine> = { temperature: 'strength', strength: 'temperature' };

export function ReplayView({ now }: { now: Now }): JSX.Element {
  const [line, setLine] = useState<StripLine>('temperature');
  const pan = selectedPan(now);
  return (
    <>
      <section class="panel replay-panel" aria-label={say('replay.whole')}>
        <WholeStrip now={now} line={line} />
        <ReplayControls now={now}>
          <KeyButton letter="W" act={() => setLine(OTHER[line])}>
            {OTHER[line] === 'strength' ? say('replay.show_strength') : say('replay.show_temperature')}
          </KeyButton>
        </ReplayControls>
      </section>
      <PansView now={now}>
        <KnownPanel now={now} />
        {pan !== null && <ChoicesPanel now={now} pan={pan} />}
      </PansView>
    </>
  );
}
