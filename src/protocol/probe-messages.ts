// What host and screen say to each other of ports and boards: which there are, what they send, what is known of them.
import { z } from 'zod';
import type { PortFormat } from '../core/boil/entries.ts';
import { formatSchema, sensorSchema } from './header-schema.ts';

const ref = z.string().min(1).max(100);
const path = z.string().min(1).max(4096);
/** As `DeviceListing.identity` has it. */
const identity = z.string().min(1).max(500);
const baud = z.number().int().min(50).max(10_000_000);

const knownDevice = z.strictObject({ baud: baud.nullable(), format: formatSchema.nullable() });

/** Commands about ports and the boards behind them. */
export const probeCommands = [
  /** Which ports the system lists, boards first; data: PortListing[] */
  z.strictObject({ ref, ports: z.literal(true) }),
  /**
   * Open ports without a boil, to see what they send; the whole list each time, empty to stop. A baud of 'find' tries
   * the usual ones; left out it is 9600.
   */
  z.strictObject({
    ref,
    listen: z
      .array(
        z.strictObject({
          path,
          baud: z.union([baud, z.literal('find')]).optional(),
          format: formatSchema.optional(),
          /** What a channel's numbers are, where the line does not say it: by channel. */
          sensors: z.record(z.string().min(1).max(200), sensorSchema).optional(),
        }),
      )
      .max(16),
  }),
  /** What a port that is listened to sent, and the baud; data: HeardPort */
  z.strictObject({ ref, heard_port: z.strictObject({ path }) }),
  /** What was kept for a board; data: KnownDevice | null */
  z.strictObject({ ref, device_known: z.strictObject({ identity }) }),
  /** Keeps what a person confirmed for a board; null forgets it. */
  z.strictObject({ ref, device_keep: z.strictObject({ identity, known: knownDevice.nullable() }) }),
  /** Boards of the running boil that seem to be on another port now, to be asked about; data: MovedPort[] */
  z.strictObject({ ref, ports_moved: z.literal(true) }),
  /** The board of a port of the running boil is on this path from now on: the answer to a MovedPort. */
  z.strictObject({ ref, port_use: z.strictObject({ port: z.string().min(1).max(200), path }) }),
] as const;

const KEYS = ['ports', 'listen', 'heard_port', 'device_known', 'device_keep', 'ports_moved', 'port_use'] as const;
export type ProbeCommand = z.infer<(typeof probeCommands)[number]>;

/** Whether a command is one of these. */
export const isProbeCommand = (command: object): command is ProbeCommand => KEYS.some((key) => key in command);

/** What a person confirmed of a board once: how fast it speaks and how its lines are read; null for not known. */
export interface KnownDevice {
  baud: number | null;
  format: PortFormat | null;
}

export interface PortListing {
  path: string;
  maker: string | null;
  serialNumber: string | null;
  /**
   * The board behind the port, whatever the port is called today: by its serial number, else its by-id name, else
   * vendor, product and socket, the first that no other board here has too. To be put into `ports[].device` of a
   * setup. null for a bare port, and for boards that nothing tells apart.
   */
  identity: string | null;
  /** A socket of the machine itself, such as ttyS0: nothing that tells of itself is plugged in there. */
  own: boolean;
  /** Other ports whose board gives the same serial number. */
  alike: string[];
  /** What that means for the person, in a sentence; null where there are none. */
  note: string | null;
  known: KnownDevice | null;
}

/** A port that is listened to. */
export interface HeardPort {
  path: string;
  /** Asked for or found; null while it is looked for, and when none of those tried gave readable lines. */
  baud: number | null;
  /** `given`: nobody asked to find it. */
  finding: 'given' | 'looking' | 'found' | 'not-found';
  /** Those tried so far, in order. */
  tried: number[];
  /** The last 50, oldest first, as they came (Latin-1), with the wall clock at their arrival (ISO 8601). */
  lines: { at: string; text: string }[];
  /** Why it is not open, or why nothing is read, in a sentence; null when there is nothing to say. */
  why: string | null;
}

/** A board that is gone from its port, and where it seems to be. */
export interface MovedPort {
  port: string;
  from: string;
  to: string;
  /** The question for a person. */
  sentence: string;
}
