// Loaded into a process of Node before its program: gives it the port to its parent that a process of Electron's has.
import { EventEmitter } from 'node:events';

class ParentPort extends EventEmitter {
  postMessage(message: object): void {
    process.send?.(message);
  }
}
const parentPort = new ParentPort();
process.on('message', ({ posted }: { posted: unknown }) => void parentPort.emit('message', { data: posted }));
Object.assign(process, { parentPort });
