// A scripted stand-in for the host: serves the built screen and speaks the protocol with invented data.
import fastifyStatic from '@fastify/static';
import fastifyWebsocket from '@fastify/websocket';
import fastify from 'fastify';
import { sapKinds } from '../../src/core/physics/sap-kinds.ts';
import type { Command, HostMessage, Now, PortListing, Settings } from '../../src/protocol/messages.ts';
import { settingsSchema } from '../../src/protocol/messages.ts';
import { curveOf, explanationOf, healthOf } from './tarn-hollow.ts';
import { pastAnswer } from './tarn-past.ts';

const HEARTBEAT_MS = 500;

export interface StandIn {
  url: string;
  /** Every command that came, in order. */
  heard: Command[];
  /** What is said from now on. */
  show(now: Now): void;
  /** From now on refuses commands that have this field, in these words. */
  refuse(name: string, why: string): void;
  /** Says nothing, as a host that hangs, until it is told to speak again. */
  fallSilent(silent: boolean): void;
  /** Cuts every connection. */
  hangUp(): void;
  close(): Promise<void>;
}

const BOARD: PortListing = {
  path: '/dev/ttyUSB0',
  maker: 'Tarn Hollow workshop',
  serialNumber: 'TH-0001',
  identity: 'TH-0001',
  own: false,
  alike: [],
  note: null,
  known: null,
};

function dataFor(command: Command): unknown {
  if ('curve' in command) return curveOf(command.curve.pan, command.curve.from, command.curve.to, command.curve.points);
  if ('explain' in command) return explanationOf(command.explain);
  if ('doubt' in command) return null;
  if ('water_at' in command) return { celsius: 97.9, low: 97.5, high: 98.3 };
  if ('ports' in command) return [BOARD];
  if ('boils' in command) {
    const boil = {
      kind: 'boil',
      boil: '2027-04-11-first-run',
      name: 'First run, invented',
      started: '2027-04-11T08:00:00-07:00',
      seconds: 31_000,
      entries: 31_204,
      running: false,
    };
    return [
      { ...boil, practice: false },
      { ...boil, boil: '2027-04-10-practice', name: 'Practice boil', practice: true },
    ];
  }
  if ('plan_put_by' in command) return { typed: null, kept: null };
  if ('learnt' in command) return [];
  if ('probes_known' in command) return [];
  if ('probes_kept' in command)
    return { probes: [], place: { altitude_m: 640 }, due: 'No probe has been checked today.' };
  if ('probe_health' in command) return healthOf();
  if ('phones' in command) return { on: false, addresses: [], url: null, trouble: null, phones: [] };
  return 'last_setup' in command ? null : pastAnswer(command);
}

/** There is no notebook behind it: tests of what is kept have a real host. */
const REFUSED = ['boil_page', 'keep_page', 'collections', 'season', 'find', 'plan', 'plan_now'];

function answerTo(command: Command, refused: ReadonlyMap<string, string>): HostMessage {
  const { ref } = command;
  const [why] = [...refused].filter(([name]) => name in command).map(([, words]) => words);
  if (why !== undefined) return { kind: 'answered', ref, ok: false, why };
  if (REFUSED.some((name) => name in command)) {
    return { kind: 'answered', ref, ok: false, why: 'The stand-in keeps no notebook.' };
  }
  return { kind: 'answered', ref, ok: true, data: dataFor(command) };
}

/** `chosen` are settings that somebody chose before. */
export async function standIn(folder: string, first: Now, chosen: Partial<Settings> = {}): Promise<StandIn> {
  const server = fastify();
  await server.register(fastifyWebsocket);
  await server.register(fastifyStatic, { root: folder });
  const heard: Command[] = [];
  const pages = new Set<{ send(text: string): void; terminate(): void }>();
  let settings = settingsSchema.parse(chosen);
  let now = first;
  let silent = false;
  const refused = new Map<string, string>();
  const say = (message: HostMessage): void => {
    if (!silent) for (const page of pages) page.send(JSON.stringify(message));
  };
  server.post('/session', async (_request, reply) => reply.code(204).send());
  server.get('/socket', { websocket: true }, (socket) => {
    pages.add(socket);
    say({
      kind: 'hello',
      version: 'stand-in',
      folder: 'nowhere',
      settings,
      saps: sapKinds,
      lan: false,
      unchosen: false,
    });
    say(now);
    socket.on('message', (text: Buffer) => {
      const command = JSON.parse(text.toString()) as Command;
      heard.push(command);
      if ('settings' in command && !refused.has('settings')) {
        settings = settingsSchema.parse({ ...settings, ...command.settings });
        say({ kind: 'settings', settings });
      }
      say(answerTo(command, refused));
    });
    socket.on('close', () => pages.delete(socket));
  });
  const timer = setInterval(() => say(now), HEARTBEAT_MS);
  const url = await server.listen({ host: '127.0.0.1', port: 0 });
  return {
    url: `${url}/#token=${'x'.repeat(32)}`,
    heard,
    show(next) {
      now = next;
      say(now);
    },
    refuse: (name, why) => void refused.set(name, why),
    fallSilent: (next) => void (silent = next),
    hangUp: () => pages.forEach((page) => page.terminate()),
    async close() {
      clearInterval(timer);
      for (const page of pages) page.terminate();
      await server.close();
    },
  };
}
