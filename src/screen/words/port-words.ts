// What became of listening to a port, in words: not to be had and why, open and silent, or which channels are heard.
import type { PortView, ProbeView } from '../client/types.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import { calledProbe } from '../probes/kept.ts';

export interface PortNews {
  state: 'opening' | 'lost' | 'silent' | 'hearing';
  sentence: string;
}

/** `port` is undefined while the host has not said anything of it. */
export function portNews(port: PortView | undefined, probes: readonly ProbeView[]): PortNews {
  if (port?.state === 'lost') {
    return { state: 'lost', sentence: port.why === null ? say('port.cannot_open') : hostWords(port.why) };
  }
  if (port === undefined || port.state === 'waiting') return { state: 'opening', sentence: say('port.opening') };
  const heard = probes
    .filter((probe) => probe.port === port.id)
    .map(({ channel }) => calledProbe({ path: port.path ?? port.id, channel }));
  if (heard.length > 0) return { state: 'hearing', sentence: say('port.hearing', { channels: heard.join(', ') }) };
  if (port.lines > 0) {
    return { state: 'silent', sentence: say('port.no_probe') };
  }
  return { state: 'silent', sentence: say('port.silent') };
}

/** A path may be the id of its port, as it is while no boil runs. */
export function portAt(ports: readonly PortView[], path: string): PortView | undefined {
  return ports.find((port) => port.path === path || port.id === path);
}
