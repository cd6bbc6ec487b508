// Checks what a screen or a calling program asks for, and says in one sentence what is wrong with it.
import { commandSchema } from '../protocol/messages.ts';
import type { Command } from '../protocol/messages.ts';
import { problemSentence } from '../protocol/problem-sentence.ts';

export type ParsedCommand = { ok: true; command: Command } | { ok: false; ref: string | null; why: string };

const NAMES = commandSchema.options.map((option) => Object.keys(option.shape).find((key) => key !== 'ref') ?? '');

/** `ref` is given back wherever it can be read, so that the caller knows which command failed. */
export function parseCommand(value: unknown): ParsedCommand {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return { ok: false, ref: null, why: 'This is no JSON object.' };
  }
  const ref = 'ref' in value && typeof value.ref === 'string' ? value.ref : null;
  const option = commandSchema.options.find((_option, index) => (NAMES[index] ?? '') in value);
  if (option === undefined) {
    return { ok: false, ref, why: `There is no such command: beside "ref" it must hold one of ${NAMES.join(', ')}.` };
  }
  const result = option.safeParse(value);
  if (result.success) return { ok: true, command: result.data as Command };
  return { ok: false, ref, why: `It cannot be done: ${problemSentence(result.error, value, 'the command')}.` };
}
