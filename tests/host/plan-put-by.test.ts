// A plan that is made in the evening is there in the morning: what was typed and what was kept outlive the program.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';

type Host = Awaited<ReturnType<typeof createHost>>;

let folder: string;
beforeEach(() => void (folder = mkdtempSync(path.join(tmpdir(), 'panwarden-test-'))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const sheet = (litres: string) => ({
  draft: { litres, boil: { pans: [{ name: 'Back pot' }] } },
  units: { volume: 'litre' },
});
const putBy = async (host: Host) => host.command({ ref: 'r', plan_put_by: true });

test('what was typed into the plan and the plan that was kept are there after a restart, until each is put away', async () => {
  let host = await createHost({ folder });
  expect(await putBy(host)).toMatchObject({ ok: true, data: { typed: null, kept: null } });
  expect(await host.command({ ref: 'r', put_plan_by: { typed: sheet('140') } })).toMatchObject({ ok: true });
  expect(await host.command({ ref: 'r', put_plan_by: { kept: sheet('100') } })).toMatchObject({ ok: true });
  await host.close();

  host = await createHost({ folder });
  expect(await putBy(host)).toMatchObject({ data: { typed: sheet('140'), kept: sheet('100') } });
  await host.command({ ref: 'r', put_plan_by: { typed: null } });
  await host.close();

  host = await createHost({ folder });
  expect(await putBy(host)).toMatchObject({ data: { typed: null, kept: sheet('100') } });
  await host.close();
});

test('what is no plan of a form is refused in a sentence, and what was put by before stays', async () => {
  const host = await createHost({ folder });
  await host.command({ ref: 'r', put_plan_by: { kept: sheet('100') } });
  expect(await host.command({ ref: 'r', put_plan_by: { kept: 'evening' } })).toMatchObject({ ok: false });
  expect(await putBy(host)).toMatchObject({ data: { typed: null, kept: sheet('100') } });
  await host.close();
});
