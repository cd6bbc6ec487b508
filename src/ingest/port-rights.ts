// Looks up on Linux who may use a port: the group that its device belongs to, and whether this user is in it.
import { readFile, stat } from 'node:fs/promises';
import { userInfo } from 'node:os';

export interface PortRights {
  /** The group that owns the device. */
  group: string;
  /** The group may read and write, and is not that of the system itself (root). */
  groupMay: boolean;
  /** `signed-in`: in the group since this user signed in. `listed`: in the group, but only from the next time on. */
  member: 'no' | 'listed' | 'signed-in';
}

/** Read and write for the group (stat(2)). */
const GROUP_READ_WRITE = 0o060;
const ROOT_GROUP = 0;

/** What the system says of the device at a path; null on other systems, and where it cannot be told. Never rejects. */
export async function portRights(path: string, groupsFile = '/etc/group'): Promise<PortRights | null> {
  if (process.platform !== 'linux') return null;
  try {
    const [{ gid, mode }, groups] = await Promise.all([stat(path), readFile(groupsFile, 'utf8')]);
    const own = groups.split('\n').find((line) => line.split(':')[2] === String(gid));
    const [group = String(gid), , , members = ''] = own?.split(':') ?? [];
    const groupMay = (mode & GROUP_READ_WRITE) === GROUP_READ_WRITE && gid !== ROOT_GROUP && own !== undefined;
    const isSignedIn = process.getgroups?.().includes(gid) === true;
    const isListed = members.split(',').includes(userInfo().username);
    return { group, groupMay, member: isSignedIn ? 'signed-in' : isListed ? 'listed' : 'no' };
  } catch {
    return null;
  }
}
