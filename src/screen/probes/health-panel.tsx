// How well each probe does, in words; what two in one pan show together; and the lines that could not be read, as they came.
import type { JSX } from 'preact';
import { boardCalled } from '../../protocol/boards.ts';
import { settings } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { Now, ProbeHealth } from '../client/types.ts';
import { usePolled } from '../onboarding/polled.ts';
import { calledProbe, pathOf } from './kept.ts';
import { healthWords, refusedWords, togetherWords } from '../words/health-words.ts';
import { panName } from '../words/pan-words.ts';
import { whyWords } from '../words/why-words.ts';

function ProbeItem({ now, probe }: { now: Now; probe: ProbeHealth['probes'][number] }): JSX.Element {
  const where = probe.pan === null ? null : panName(now.header, probe.pan);
  const { channel, doubt } = probe;
  const bare = calledProbe({ path: pathOf(now, probe.port), channel });
  const called = where === null ? bare : say('probes.in_pan', { pan: where, channel });
  return (
    <li class="health">
      <b>{probe.isReference ? say('probes.of_water', { probe: called }) : called}</b>
      {doubt !== null && (
        <p class="problem">{say('probes.cannot_be_right', { doubt: hostWords(whyWords(doubt, settings.value)) })}</p>
      )}
      <p>{healthWords(probe, settings.value)}</p>
    </li>
  );
}

/** "not a number: T1=9x", of which the piece of the line stays as it came. */
function refusalWords(why: string): string {
  const at = why.indexOf(': ');
  return at < 0
    ? hostWords(why)
    : say('probes.refused_piece', { reason: hostWords(why.slice(0, at)), piece: why.slice(at + 2) });
}

/** The lines stay folded away until somebody wants them. */
function RefusedLines({ now, refused }: { now: Now; refused: ProbeHealth['refused'][number] }): JSX.Element {
  return (
    <li>
      {refused.reasons.map(({ reason, count }) => (
        <p key={reason}>{refusedWords(boardCalled(now.header, refused.port), reason, count)}</p>
      ))}
      <details>
        <summary>{say('probes.show_refused')}</summary>
        <ul>
          {refused.last.map(({ t, line, why }, place) => (
            <li key={`${t} ${place}`}>
              <code class="raw">{line}</code> <small>{refusalWords(why)}</small>
            </li>
          ))}
        </ul>
      </details>
    </li>
  );
}

export function HealthPanel({ now }: { now: Now }): JSX.Element | null {
  const health = usePolled<ProbeHealth>({ probe_health: true });
  if (health === null || health.probes.length + health.refused.length === 0) return null;
  return (
    <section class="panel">
      <h2>{say('probes.how_well')}</h2>
      <ul>
        {health.probes.map((probe) => (
          <ProbeItem key={probe.id} now={now} probe={probe} />
        ))}
      </ul>
      {health.together.map((one) => (
        <p key={one.pan}>{togetherWords(panName(now.header, one.pan), one, settings.value)}</p>
      ))}
      {health.refused.length > 0 && <h3>{say('probes.unread_lines')}</h3>}
      <ul>
        {health.refused.map((one) => (
          <RefusedLines key={one.port} now={now} refused={one} />
        ))}
      </ul>
    </section>
  );
}
