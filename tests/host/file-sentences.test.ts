// What the host says of a file that it cannot take in is known to the catalogue, whole: recordings and photos.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import type { Host } from '../../src/host/host.ts';
import { pictureToKeep } from '../../src/host/photo-metadata.ts';
import { formOf } from '../../src/language/host-words.ts';
import { HandClock } from './hand-clock.ts';

let folder: string;
let host: Host;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'file-sentences-'));
  host = await createHost({ folder, machine: new HandClock(), addresses: () => [] });
});

afterAll(async () => {
  await host?.close();
  await rm(folder, { recursive: true, force: true });
});

async function* piece(text: string): AsyncGenerator<string> {
  yield text;
}

/** The sentence that a refusal is. */
async function refusal(work: () => unknown): Promise<string> {
  try {
    await work();
  } catch (error) {
    return (error as Error).message;
  }
  throw new Error('it was taken in');
}

const WRONG = [
  ['empty', '', 'host.file.empty'],
  ['a line without an end', 'milk', 'host.file.no_end'],
  ['no header', '{"recording":"panwarden"}\n', 'host.file.header'],
] as const;

test.each(WRONG)('a recording that is wrong (%s) is told of, imported or opened', async (_, text, key) => {
  const imported = await refusal(() => host.importRecording(piece(text), 'the file'));
  expect(formOf(imported)).toMatchObject({ key, values: { name: 'the file' } });
  const opened = await refusal(() => host.openRecording(piece(text), 'the file'));
  expect(formOf(opened)?.key).toBe(key.replace('file.', 'file.opened_'));
});

test('a pack of another program without a temperature', async () => {
  const text = '[{"n":"pot","u":"m","v":1,"t":1900000000}]';
  const said = formOf(await refusal(() => host.importRecording(piece(text), 'the file')));
  expect(said?.key).toBe('host.file.senml');
  expect(formOf(said?.values['why'] ?? '')?.key).toBe('host.file.senml_none');
});

const PACKS: readonly (readonly [string, string])[] = [
  ['host.file.senml_no_array', 'x'],
  ['host.file.senml_breaks_off', '{}'],
  ['host.file.senml_object', '{nonsense}]'],
  ['host.file.senml_nested', `{"n":${'['.repeat(20)}`],
  ['host.file.senml_long', `{"n":"${'x'.repeat(70_000)}"}]`],
  ['host.file.senml_version', '{"n":"pot","v":1,"bver":99}]'],
  ['host.file.senml_versions', '{"n":"pot","v":1,"bver":5},{"bver":6}]'],
  ['host.file.senml_values', '{"n":"pot","v":1,"vs":"x"}]'],
  ['host.file.senml_unknown', '{"n":"pot","v":1,"new_":1}]'],
  ['host.file.senml_name', '{"n":"a pot","v":1}]'],
  ['host.file.senml_field', '{"n":"pot","v":"hot"}]'],
  ['host.file.senml_times', '{"n":"pot","u":"Cel","v":1,"t":5}]'],
  ['host.file.senml_long_name', `{"n":"${'p'.repeat(300)}","u":"Cel","v":1,"t":1900000000}]`],
];

test.each(PACKS)('a pack of another program that cannot be read: %s', async (key, text) => {
  const said = formOf(await refusal(() => host.importRecording(piece(`[${text}`), 'the file')));
  const why = formOf(said?.values['why'] ?? '');
  expect(why?.key === 'host.file.senml_record' ? formOf(why.values['why'] ?? '')?.key : why?.key).toBe(key);
});

test('a first line that is none says what stands there', async () => {
  const why = async (text: string): Promise<string | undefined> =>
    formOf(formOf(await refusal(() => host.importRecording(piece(`${text}\n`), 'the file')))?.values['why'] ?? '')?.key;
  expect(await why('hello')).toBe('host.file.no_json');
  expect(await why('"hello"')).toBe('host.file.no_json_object');
  expect(await why('{"recording":"panwarden","version":7}')).toBe('host.file.later_version');
  expect(await why('{"recording":"panwarden","version":1}')).toBe('host.problem.missing');
});

test('a file that is no photo, one of a telephone, and one that is cut off', async () => {
  const of = async (bytes: number[]): Promise<string | undefined> =>
    formOf(await refusal(() => pictureToKeep(new Uint8Array(bytes), false)))?.key;
  expect(await of([1, 2, 3])).toBe('host.photo.no_picture');
  expect(await of([0, 0, 0, 24, 0x66, 0x74, 0x79, 0x70])).toBe('host.photo.no_picture_phone');
  expect(await of([0xff, 0xd8, 0xff, 0xe1, 0xff])).toBe('host.photo.damaged');
});
