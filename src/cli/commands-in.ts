// Commands on standard input for a program that runs `watch --json`: one JSON object a line, each answered.
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import type { Host } from '../host/host.ts';

const TAKEN_HERE = ['mark', 'answer', 'set', 'end'];

/** `print` gets the answers; `ended` is called when a command has ended the boil. Returns the way to stop. */
export function readCommands(
  input: Readable,
  host: Pick<Host, 'command'>,
  print: (text: string) => void,
  ended: () => void,
): () => void {
  const lines = createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY });
  lines.on('line', (line) => {
    if (line.trim() === '') return;
    const value = parsed(line);
    void answerTo(value, host).then((answer) => {
      print(JSON.stringify(answer));
      if (answer.ok && 'end' in (value ?? {})) ended();
    });
  });
  return () => lines.close();
}

type Fields = Record<string, unknown>;

/** The caller's own `ref` comes back as it was, a number too. */
async function answerTo(value: Fields | null, host: Pick<Host, 'command'>): Promise<{ ok: boolean } & Fields> {
  if (value === null) return { kind: 'answered', ref: null, ok: false, why: 'This is no JSON object.' };
  const { ref } = value;
  if (!TAKEN_HERE.some((name) => name in value)) {
    const why = `There is no such command here: beside "ref" it must hold one of ${TAKEN_HERE.join(', ')}.`;
    return { kind: 'answered', ref: ref ?? null, ok: false, why };
  }
  const answer = await host.command(typeof ref === 'number' ? { ...value, ref: String(ref) } : value);
  return { ...answer, ref: ref ?? null };
}

function parsed(line: string): Fields | null {
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : null;
  } catch {
    return null;
  }
}
