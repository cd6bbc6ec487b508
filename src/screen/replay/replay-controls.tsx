// The buttons under the strip: steps to what was noted and called, a minute either way, and how fast it plays.
import type { ComponentChildren, JSX } from 'preact';
import { useState } from 'preact/hooks';
import { Select, saidOptions } from '../boil/inputs.tsx';
import type { Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { seekBy, setSpeed, step } from './replay-control.ts';
import type { StepTo } from './replay-control.ts';
import { type MessageKey, say } from '../language/say.ts';
import { MINUTE_MS } from '../../core/quantities/time.ts';

/** Neighbours on the keyboard, the slowest first. */
const SPEEDS = [
  ['U', 1],
  ['I', 10],
  ['O', 60],
  ['P', 600],
] as const;
const STEPS: readonly (readonly [StepTo, MessageKey])[] = [
  ['either', 'replay.step.either'],
  ['mark', 'replay.step.mark'],
  ['alarm', 'replay.step.alarm'],
];

export function ReplayControls({ now, children }: { now: Now; children: ComponentChildren }): JSX.Element {
  const [to, setTo] = useState<StepTo>('either');
  return (
    <div class="replay-controls row">
      <span class="speeds" role="group" aria-label={say('replay.go')}>
        <KeyButton letter="B" act={() => step('previous', to)}>
          {say('replay.before')}
        </KeyButton>
        <KeyButton letter="N" act={() => step('next', to)}>
          {say('replay.next')}
        </KeyButton>
      </span>
      <Select label={say('replay.steps_to')} value={to} options={saidOptions(STEPS)} set={setTo} />
      <span class="speeds" role="group" aria-label={say('replay.a_minute')}>
        <KeyButton letter="ArrowLeft" act={() => seekBy(-MINUTE_MS)}>
          {say('replay.minute_back')}
        </KeyButton>
        <KeyButton letter="ArrowRight" act={() => seekBy(MINUTE_MS)}>
          {say('replay.minute_on')}
        </KeyButton>
      </span>
      <span class="speeds speeds-replay" role="group" aria-label={say('replay.speed')}>
        {SPEEDS.map(([letter, speed]) => (
          <KeyButton key={letter} letter={letter} pressed={now.speed === speed} act={() => setSpeed(speed)}>
            {speed}×
          </KeyButton>
        ))}
      </span>
      {children}
    </div>
  );
}
