// How well each probe does, in words; what two in one pan show together; and the lines that could not be read, as they came.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { Now, ProbeHealth } from '../client/types.ts';
import { usePolled } from '../onboarding/polled.ts';
import { healthWords, rejectedWords, togetherWords } from '../words/health-words.ts';
import { panName } from '../words/pan-words.ts';

function ProbeItem({ now, probe }: { now: Now; probe: ProbeHealth['probes'][number] }): JSX.Element {
  const where = probe.pan === null ? null : panName(now.header, probe.pan);
  return (
    <li class="health">
      <b>
        {where === null ? probe.channel : `${where} (${probe.channel})`}
        {probe.isReference ? ', plain boiling water' : ''}
      </b>
      {probe.doubt !== null && <p class="problem">▲ Cannot be right: {probe.doubt}.</p>}
      <p>{healthWords(probe, settings.value)}</p>
    </li>
  );
}

/** The lines stay folded away until somebody wants them. */
function RejectedLines({ rejected }: { rejected: ProbeHealth['rejected'][number] }): JSX.Element {
  return (
    <li>
      {rejected.reasons.map(({ reason, count, last }) => (
        <details key={reason}>
          <summary>{rejectedWords(rejected.port, reason, count)}</summary>
          <ul>
            {last.map(({ t, line }, place) => (
              <li key={`${t} ${place}`}>
                <code class="raw">{line}</code>
              </li>
            ))}
          </ul>
        </details>
      ))}
    </li>
  );
}

export function HealthPanel({ now }: { now: Now }): JSX.Element | null {
  const health = usePolled<ProbeHealth>({ probe_health: true });
  if (health === null || health.probes.length + health.rejected.length === 0) return null;
  return (
    <section class="panel">
      <h2>How well they do</h2>
      <ul>
        {health.probes.map((probe) => (
          <ProbeItem key={probe.id} now={now} probe={probe} />
        ))}
      </ul>
      {health.together.map((one) => (
        <p key={one.pan}>{togetherWords(panName(now.header, one.pan), one, settings.value)}</p>
      ))}
      {health.rejected.length > 0 && <h3>Lines that could not be read</h3>}
      <ul>
        {health.rejected.map((one) => (
          <RejectedLines key={one.port} rejected={one} />
        ))}
      </ul>
    </section>
  );
}
