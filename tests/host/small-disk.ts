// A disk of 2 MB for the tests: a tmpfs, which only root may mount.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Its folder and the way to take it away; null where it cannot be mounted. */
export function smallDisk(): { folder: string; remove: () => void } | null {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-disk-'));
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', folder]).status === 0;
  const remove = () => {
    if (mounted) spawnSync('umount', ['-l', folder]);
    rmSync(folder, { recursive: true, force: true });
  };
  if (mounted) return { folder, remove };
  remove();
  return null;
}
