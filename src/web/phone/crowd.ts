// The phones that look on: how many there may be, in all and from one address, and which they are.
import type { PhoneSocket } from './phone-socket.ts';

const MOST = 20;
const MOST_AN_ADDRESS = 5;

export class Crowd {
  readonly #sockets = new Set<PhoneSocket>();

  hasRoomFor(ip: string): boolean {
    const same = [...this.#sockets].filter((socket) => socket.ip === ip).length;
    return this.#sockets.size < MOST && same < MOST_AN_ADDRESS;
  }

  add(socket: PhoneSocket): void {
    this.#sockets.add(socket);
    socket.onClose(() => this.#sockets.delete(socket));
  }

  phones(): ReadonlySet<string> {
    return new Set([...this.#sockets].map(({ phone }) => phone));
  }

  each(phone: string, act: (socket: PhoneSocket) => void): void {
    for (const socket of this.#sockets) if (socket.phone === phone) act(socket);
  }
}
