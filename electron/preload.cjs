// Gives the page its link to the host: the few named functions of `Link`, and nothing of Electron's own.
// A sandboxed preload can load neither modules nor TypeScript nor files of ours, so this is one plain script.
const { contextBridge, ipcRenderer } = require('electron');

/** @type {Set<(event: import('../src/screen/client/link.ts').LinkEvent) => void>} */
const listeners = new Set();

/** @param {import('../src/screen/client/types.ts').HostMessage} message */
function pass(message) {
  for (const hear of listeners) hear({ kind: 'message', message });
}

ipcRenderer.on('panwarden:message', (_event, message) => pass(message));

/** @type {import('../src/screen/client/link.ts').Link} */
const link = {
  send(command) {
    const why = 'The program did not take this. Look whether it took effect before you try again.';
    const failed = () => pass({ kind: 'answered', ref: command.ref, ok: false, why });
    ipcRenderer.invoke('panwarden:command', command).then(pass, failed);
    return true;
  },
  listen(hear) {
    listeners.add(hear);
    ipcRenderer.invoke('panwarden:listen').then(() => hear({ kind: 'state', now: { state: 'open' } }));
    return () => listeners.delete(hear);
  },
  hand(way, recording) {
    const handed = recording.arrayBuffer().then((buffer) => ({ way, bytes: new Uint8Array(buffer) }));
    const failed = () => ({ ok: /** @type {const} */ (false), why: 'The file could not be read. Has it been moved?' });
    return handed.then((given) => ipcRenderer.invoke('panwarden:hand', given)).catch(failed);
  },
};

contextBridge.exposeInMainWorld('panwarden', link);
