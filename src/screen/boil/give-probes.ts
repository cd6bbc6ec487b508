// Gives probes to the pans of the boil's form: by a choice, and by itself where a probe was named after the pan.
import type { KeptProbe, PortFormat, ProbeView, Sensor } from '../client/types.ts';
import { channelsOf, withChannel } from '../probes/channels.ts';
import type { Channel } from '../probes/channels.ts';
import { boardNameAt, deviceAt, keptAt } from '../probes/kept.ts';
import { listened } from '../probes/listening.ts';
import { calledIn, isUsualName } from './boil-draft.ts';
import type { BoilDraft, PanDraft } from './boil-draft.ts';

const keptOf = ({ path, channel }: Channel): KeptProbe | undefined =>
  keptAt(path).find((one) => one.channel === channel);

/** What setting probes up found of a channel and its board, so that nobody has to say it again. */
function toldOf(channel: Channel): Parameters<typeof withChannel>[3] {
  const heard = listened.value.find((each) => each.path === channel.port);
  const sensor = (heard?.sensors?.[channel.channel] as Sensor | undefined) ?? keptOf(channel)?.sensor;
  return {
    name: boardNameAt(channel.port),
    baud: typeof heard?.baud === 'number' ? heard.baud : undefined,
    device: deviceAt(channel.port),
    sensor,
  };
}

/** A board whose lines were confirmed is read in the same way in the boil. */
function withFormats(ports: BoilDraft['ports']): BoilDraft['ports'] {
  return ports.map((port) => {
    const format = listened.value.find(({ path }) => path === port.path)?.format;
    return port.format !== undefined || format === undefined ? port : { ...port, format: format as PortFormat };
  });
}

/** The draft with the pan's probe set to a channel; a channel that is new to the boil joins its probes. */
export function giveProbe(draft: BoilDraft, views: readonly ProbeView[], pan: PanDraft, key: string): BoilDraft {
  const channels = channelsOf(views, draft.probes, draft.ports);
  const channel = channels.find((each) => each.key === key);
  const former = channels.find((each) => each.key === pan.probe);
  const next = channel === undefined ? null : withChannel(draft.ports, draft.probes, channel, toldOf(channel));
  const name = channel === undefined ? '' : (keptOf(channel)?.name ?? '');
  // A name that came with the probe that hung there goes with it.
  const isGiven = isUsualName(pan.name) || (former !== undefined && keptOf(former)?.name === pan.name);
  const named = name !== '' && isGiven ? { ...pan, name } : pan;
  const pans = draft.pans.map((each) => (each === pan ? { ...named, probe: next?.probe ?? key } : each));
  if (next === null) return { ...draft, pans };
  return { ...draft, ports: withFormats(next.ports), probes: next.probes, pans };
}

type Choices = Record<string, Pick<Channel, 'path' | 'channel'> | null>;

/**
 * The draft with the channels that a person chose for its pans, by the pan's id, null for none; the choices that are
 * still known, and what the pans are called whose channel is not: those stand as they would without a choice.
 */
export function giveChosen(
  draft: BoilDraft,
  views: readonly ProbeView[],
  chosen: Choices,
): { draft: BoilDraft; known: Choices; lost: string[] } {
  const known: Choices = {};
  const lost: string[] = [];
  let given = draft;
  for (const [id, choice] of Object.entries(chosen)) {
    const pan = given.pans.find(({ before }) => before.id === id);
    if (pan === undefined) continue;
    const channel = channelsOf(views, given.probes, given.ports).find(
      (each) => each.path === choice?.path && each.channel === choice.channel,
    );
    if (choice !== null && channel === undefined) lost.push(calledIn(pan));
    else {
      known[id] = choice;
      given = giveProbe(given, views, pan, channel?.key ?? '');
    }
  }
  return { draft: given, known, lost };
}

/** Without the probes and ports that only a choice brought which was then changed; those of `told` stay. */
export function withoutUnused(draft: BoilDraft, told: BoilDraft | null): BoilDraft {
  const before = (list: readonly { id: string }[] | undefined, id: string): boolean =>
    list?.some((one) => one.id === id) ?? false;
  const probes = draft.probes.filter(
    ({ id }) => before(told?.probes, id) || draft.pans.some(({ probe }) => probe === id),
  );
  const ports = draft.ports.filter(({ id }) => before(told?.ports, id) || probes.some(({ port }) => port === id));
  return { ...draft, ports, probes };
}

const alike = (one: string, other: string): boolean =>
  one.trim().toLocaleLowerCase() === other.trim().toLocaleLowerCase();

/** Channels that speak now. */
const speaking = (draft: BoilDraft, views: readonly ProbeView[]): Channel[] =>
  channelsOf(views, draft.probes, draft.ports).filter(({ celsius }) => celsius !== null);

/**
 * Each probe that is heard, was named after a pan without a probe, and is in no other, is given to that pan. `chosen`
 * are the pans, by id, whose probe a person chose, be it none. The same draft where there is nothing to give.
 */
export function giveByName(draft: BoilDraft, views: readonly ProbeView[], chosen: ReadonlySet<string>): BoilDraft {
  return speaking(draft, views).reduce((given, channel) => {
    const name = keptOf(channel)?.name.trim() ?? '';
    const pans = given.pans.filter((pan) => name !== '' && alike(pan.name, name));
    const [pan] = pans;
    const isTaken = given.pans.some(({ probe }) => probe === channel.key);
    if (pan === undefined || pans.length > 1 || isTaken || pan.probe !== '' || chosen.has(pan.before.id)) return given;
    return giveProbe(given, views, pan, channel.key);
  }, draft);
}

/** The pans that no probe watches though probes are heard, and the channels heard that hang in none; null for no such pan. */
export function unwatched(draft: BoilDraft, views: readonly ProbeView[]): { pans: PanDraft[]; free: Channel[] } | null {
  const channels = speaking(draft, views);
  const pans = draft.pans.filter(({ probe }) => probe === '');
  if (channels.length === 0 || pans.length === 0) return null;
  return { pans, free: channels.filter(({ key }) => draft.pans.every(({ probe }) => probe !== key)) };
}
