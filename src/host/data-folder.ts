// Where the notebook is when nobody says: the environment, else the system's own place for a user's data.
import { homedir, platform } from 'node:os';
import { join, resolve } from 'node:path';

/** The `--data` option, else `PANWARDEN_DATA`, else the system's own place; an absolute path. */
export function dataFolder(given: string | undefined, environment: NodeJS.ProcessEnv = process.env): string {
  const chosen = given ?? environment['PANWARDEN_DATA'];
  return chosen === undefined || chosen === '' ? systemPlace(environment) : resolve(chosen);
}

function systemPlace(environment: NodeJS.ProcessEnv): string {
  switch (platform()) {
    case 'darwin':
      return join(homedir(), 'Library/Application Support/panwarden');
    case 'win32':
      return join(environment['APPDATA'] ?? join(homedir(), 'AppData/Roaming'), 'panwarden');
    default:
      // XDG Base Directory Specification: a relative path there is to be ignored.
      return join(absolute(environment['XDG_DATA_HOME']) ?? join(homedir(), '.local/share'), 'panwarden');
  }
}

function absolute(path: string | undefined): string | undefined {
  return path?.startsWith('/') ? path : undefined;
}
