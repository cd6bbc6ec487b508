// How well each probe does, in words; what two in one pan show together; and the lines that could not be read, as they came.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { Now, ProbeHealth } from '../client/types.ts';
import { usePolled } from '../onboarding/polled.ts';
import { healthWords, refusedWords, togetherWords } from '../words/health-words.ts';
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
function RefusedLines({ refused }: { refused: ProbeHealth['refused'][number] }): JSX.Element {
  return (
    <li>
      {refused.reasons.map(({ reason, count }) => (
        <p key={reason}>{refusedWords(refused.port, reason, count)}</p>
      ))}
      <details>
        <summary>Show the last of them as they came</summary>
        <ul>
          {refused.last.map(({ t, line, why }, place) => (
            <li key={`${t} ${place}`}>
              <code class="raw">{line}</code> <small>{why}</small>
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
      <h2>How well they do</h2>
      <ul>
        {health.probes.map((probe) => (
          <ProbeItem key={probe.id} now={now} probe={probe} />
        ))}
      </ul>
      {health.together.map((one) => (
        <p key={one.pan}>{togetherWords(panName(now.header, one.pan), one, settings.value)}</p>
      ))}
      {health.refused.length > 0 && <h3>Lines that could not be read</h3>}
      <ul>
        {health.refused.map((one) => (
          <RefusedLines key={one.port} refused={one} />
        ))}
      </ul>
    </section>
  );
}
