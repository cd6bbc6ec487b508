// Who may open a port: the group that really owns it is named, with the command and what it takes until that counts.
import { chmodSync, chownSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir, userInfo } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { portRights, type PortRights } from '../../src/ingest/port-rights.ts';
import { openingTrouble } from '../../src/ingest/port-trouble.ts';

const denied = new Error('Error: Permission denied, cannot open /dev/x');
const said = async (rights: PortRights | null): Promise<string> =>
  (await openingTrouble({ id: 'A', path: '/dev/x' }, denied, async () => rights)).sentence;
const owned: PortRights = { group: 'syrup', groupMay: true, member: 'no' };

test.each<[string, PortRights | null, RegExp]>([
  ['outside of the group', owned, /the group "syrup" owns it; type "sudo usermod -aG syrup \$USER" .* Sign out and in/],
  ['in it from the next time on', { ...owned, member: 'listed' }, /you are in that group, but only .* Sign out and in/],
  ['in it', { ...owned, member: 'signed-in' }, /or is held by another program: close other programs/],
  ['where the group may not either', { ...owned, groupMay: false }, /type "sudo chmod a\+rw \/dev\/x" in a terminal/],
  ['where nobody can tell', null, /or is held by another program: close other programs/],
])('a user %s is told what to do', async (_who, rights, words) => {
  expect(await said(rights)).toMatch(words);
  expect(await said(rights)).toMatch(
    /^Port A \(\/dev\/x\) may not be opened by this user.* It is tried again until it opens\.$/,
  );
});

test.runIf(process.platform === 'linux')("the group and its members are the system's own", async () => {
  const folder = mkdtempSync(join(tmpdir(), 'port-rights-'));
  const [port, groups] = [join(folder, 'port'), join(folder, 'group')];
  try {
    writeFileSync(port, '');
    chmodSync(port, 0o660);
    // A group that this user is not in needs root to be given; without root its own group does for the name.
    const isRoot = process.getuid?.() === 0;
    const gid = isRoot ? 4711 : userInfo().gid;
    if (isRoot) chownSync(port, 0, gid);
    const line = (members: string): void => writeFileSync(groups, `other:x:1:\nsyrup:x:${gid}:${members}\n`);
    line('');
    expect(await portRights(port, groups)).toEqual({
      group: 'syrup',
      groupMay: true,
      member: isRoot ? 'no' : 'signed-in',
    });
    line(`somebody,${userInfo().username}`);
    expect((await portRights(port, groups))?.member).toBe(isRoot ? 'listed' : 'signed-in');
    chmodSync(port, 0o640);
    expect((await portRights(port, groups))?.groupMay).toBe(false);
    expect(await portRights(join(folder, 'none'), groups)).toBeNull();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
