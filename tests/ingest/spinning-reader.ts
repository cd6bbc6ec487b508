// Stands in for the process that reads a port whose adapter was pulled: reading nothing, over and over, and saying nothing of it.
import { read } from 'node:fs';
import { openSync } from 'node:fs';

const nothing = openSync('/dev/null', 'r');
const over = (): void => void read(nothing, Buffer.alloc(1), 0, 1, null, () => over());

let before = process.cpuUsage();
setInterval(() => {
  const { user, system } = process.cpuUsage(before);
  before = process.cpuUsage();
  process.send?.({ beat: (user + system) / 1000 });
}, 1000);
process.on('message', () => {
  process.send?.({ opened: true });
  over();
});
process.on('disconnect', () => process.exit());
process.on('SIGTERM', () => undefined);
