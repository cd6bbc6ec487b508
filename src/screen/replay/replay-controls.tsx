// The buttons under the strip: steps to what was noted and called, a minute either way, and how fast it plays.
import type { ComponentChildren, JSX } from 'preact';
import { useState } from 'preact/hooks';
import { Select } from '../boil/inputs.tsx';
import type { Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { seek, setSpeed, step } from './replay-control.ts';
import type { StepTo } from './replay-control.ts';

/** Neighbours on the keyboard, the slowest first. */
const SPEEDS = [
  ['U', 1],
  ['I', 10],
  ['O', 60],
  ['P', 600],
] as const;
const STEPS: readonly (readonly [StepTo, string])[] = [
  ['either', 'marks, alarms'],
  ['mark', 'marks'],
  ['alarm', 'alarms'],
];
const MINUTE_MS = 60_000;

export function ReplayControls({ now, children }: { now: Now; children: ComponentChildren }): JSX.Element {
  const [to, setTo] = useState<StepTo>('either');
  return (
    <div class="replay-controls row">
      <span class="speeds" role="group" aria-label="Go">
        <KeyButton letter="B" act={() => step('previous', to)}>
          Before
        </KeyButton>
        <KeyButton letter="N" act={() => step('next', to)}>
          Next
        </KeyButton>
      </span>
      <Select label="Steps to" value={to} options={STEPS} set={setTo} />
      <span class="speeds" role="group" aria-label="A minute">
        <KeyButton letter="ArrowLeft" act={() => seek(now, now.t - MINUTE_MS)}>
          1 min
        </KeyButton>
        <KeyButton letter="ArrowRight" act={() => seek(now, now.t + MINUTE_MS)}>
          1 min
        </KeyButton>
      </span>
      <span class="speeds speeds-replay" role="group" aria-label="Speed">
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
