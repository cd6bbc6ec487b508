// Remembers which board was seen on each port of a boil, so that it is found again after a restart under another path.
import type { Notebook } from '../notebook/contract.ts';

/** The path that the setup names, and what the board behind it says of itself (device-identity.ts). */
export interface BoardSeen {
  path: string;
  device: string;
}

/** By the port's id. */
export type BoardsOfBoil = Record<string, BoardSeen>;

interface Kept {
  boil: string;
  ports: BoardsOfBoil;
}

const KEY = 'boards-seen';

export class BoardsSeen {
  readonly #notebook: Pick<Notebook, 'setting' | 'keepSetting'>;
  #kept: Kept | null;

  constructor(notebook: Pick<Notebook, 'setting' | 'keepSetting'>) {
    this.#notebook = notebook;
    this.#kept = notebook.setting(KEY) as Kept | null;
  }

  /** Those of this boil only: on the same path there may be another board the next day. */
  of(boil: string): BoardsOfBoil {
    return this.#kept?.boil === boil ? this.#kept.ports : {};
  }

  note(boil: string, port: string, board: BoardSeen): void {
    this.#kept = { boil, ports: { ...this.of(boil), [port]: board } };
    try {
      this.#notebook.keepSetting(KEY, this.#kept);
    } catch {
      // While nothing can be written down it is remembered for as long as the program runs.
    }
  }
}
