// The process that reads a port, as a user who may do nothing: where tests run as root, no port is forbidden.
import '../../src/ingest/reader.ts';

const NOBODY = 65_534;

if (process.getuid?.() === 0) {
  process.setgroups?.([]);
  process.setgid?.(NOBODY);
  process.setuid?.(NOBODY);
}
