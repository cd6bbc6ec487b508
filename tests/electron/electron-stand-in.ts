// Stands in for Electron, which these tests run without: it records what the program sets and fires what Electron would.
import { fork } from 'node:child_process';
import { EventEmitter } from 'node:events';

/** What was done before the program was told that Electron is ready, in order. */
export const early: string[] = [];

class App extends EventEmitter {
  hasLock = true;
  switches = new Set<string>();
  readonly commandLine = { hasSwitch: (name: string): boolean => this.switches.has(name) };
  quits = 0;
  recent: string[] = [];
  badge = 0;
  again: { args: string[] }[] = [];
  modelId = '';
  locale = 'en-US';
  #isReady = false;
  exits: (number | undefined)[] = [];
  paths: Record<string, string> = {};
  #ready = Promise.withResolvers<void>();

  enableSandbox(): void {
    early.push('sandbox');
  }
  setPath(name: string, path: string): void {
    early.push('path');
    this.paths[name] = path;
  }
  requestSingleInstanceLock(): boolean {
    early.push('lock');
    return this.hasLock;
  }
  whenReady(): Promise<void> {
    return this.#ready.promise;
  }
  becomeReady(): void {
    this.#isReady = true;
    this.#ready.resolve();
  }
  isReady(): boolean {
    return this.#isReady;
  }
  /** Of no use before Electron is ready. */
  getLocale(): string {
    return this.#isReady ? this.locale : '';
  }
  setAppUserModelId(id: string): void {
    this.modelId = id;
  }
  addRecentDocument(path: string): void {
    this.recent.push(path);
  }
  setBadgeCount(count: number): void {
    this.badge = count;
  }
  relaunch(options: { args: string[] }): void {
    this.again.push(options);
  }
  quit(): void {
    this.quits += 1;
  }
  exit(code?: number): void {
    this.exits.push(code);
  }
}
export const app = new App();

export interface Frame {
  url: string;
  origin: string;
  parent: unknown;
}

export class WebContents extends EventEmitter {
  mainFrame: Frame = { url: 'app://panwarden/index.html#/pans', origin: 'app://panwarden', parent: null };
  sent: unknown[][] = [];
  reloads = 0;
  crashes = 0;
  scripts: string[] = [];
  isGone = false;
  openHandler: ((details: unknown) => unknown) | null = null;

  setWindowOpenHandler(handler: (details: unknown) => unknown): void {
    this.openHandler = handler;
  }
  send(...message: unknown[]): void {
    this.sent.push(message);
  }
  isDestroyed(): boolean {
    return false;
  }
  reload(): void {
    this.reloads += 1;
  }
  async executeJavaScript(script: string): Promise<void> {
    if (this.isGone) throw new Error('the page is gone');
    this.scripts.push(script);
  }
  forcefullyCrashRenderer(): void {
    this.crashes += 1;
  }
}

export class BrowserWindow extends EventEmitter {
  static opened: BrowserWindow[] = [];
  readonly webContents = new WebContents();
  readonly options: { webPreferences: Record<string, unknown> };
  addresses: string[] = [];
  did: string[] = [];
  small = false;

  constructor(options: { webPreferences: Record<string, unknown> }) {
    super();
    this.options = options;
    BrowserWindow.opened.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  async loadURL(address: string): Promise<void> {
    this.addresses.push(address);
  }
  isMinimized(): boolean {
    return this.small;
  }
  restore(): void {
    this.did.push('restore');
  }
  show(): void {
    this.did.push('show');
  }
  hide(): void {
    this.did.push('hide');
  }
  destroy(): void {
    this.did.push('destroy');
  }
}

type Decide = (answer: unknown) => void;
type Handler = (...given: never[]) => unknown;

export class Session {
  schemes = new Map<string, (request: Request) => Promise<Response>>();
  permissionRequest: ((contents: unknown, permission: string, decide: Decide) => void) | null = null;
  permissionCheck: Handler | null = null;
  devicePermission: Handler | null = null;
  beforeRequest: ((details: { url: string }, decide: Decide) => void) | null = null;
  readonly protocol = {
    handle: (scheme: string, handler: (request: Request) => Promise<Response>) =>
      void this.schemes.set(scheme, handler),
  };
  readonly webRequest = {
    onBeforeRequest: (handler: (details: { url: string }, decide: Decide) => void) => (this.beforeRequest = handler),
  };

  setPermissionRequestHandler(handler: (contents: unknown, permission: string, decide: Decide) => void): void {
    this.permissionRequest = handler;
  }
  setPermissionCheckHandler(handler: Handler): void {
    this.permissionCheck = handler;
  }
  setDevicePermissionHandler(handler: Handler): void {
    this.devicePermission = handler;
  }
}
export const session = { defaultSession: new Session() };

export const protocol = {
  schemes: [] as unknown[],
  registerSchemesAsPrivileged(schemes: unknown[]): void {
    early.push('scheme');
    this.schemes.push(...schemes);
  },
};

export interface Speaker {
  sender: unknown;
  senderFrame: Frame | null;
}
export const ipcMain = {
  handlers: new Map<string, (event: Speaker, ...given: unknown[]) => unknown>(),
  handle(channel: string, handler: (event: Speaker, ...given: unknown[]) => unknown): void {
    this.handlers.set(channel, handler);
  },
};

export class Notification extends EventEmitter {
  static shown: Notification[] = [];
  static isSupported = (): boolean => true;
  readonly options: { title: string; body: string };
  constructor(options: { title: string; body: string }) {
    super();
    this.options = options;
  }
  show(): void {
    Notification.shown.push(this);
  }
}

export const powerSaveBlocker = {
  works: true,
  running: new Map<number, string>(),
  stopped: [] as number[],
  start(kind: string): number {
    const id = 7 + this.running.size;
    this.running.set(id, kind);
    return id;
  },
  isStarted(id: number): boolean {
    return this.works && this.running.has(id);
  },
  stop(id: number): void {
    this.stopped.push(id);
    this.running.delete(id);
  },
};

export const shell = {
  beeps: 0,
  beep(): void {
    this.beeps += 1;
  },
};

export const dialog = {
  questions: [] as { buttons?: string[]; message?: string; detail?: string }[],
  /** What the person chooses where a file is asked for. */
  chosen: [] as string[],
  errors: [] as string[],
  /** Which button the person presses. */
  response: 0,
  async showMessageBox(_window: unknown, question: { buttons?: string[] }): Promise<{ response: number }> {
    this.questions.push(question);
    return { response: this.response };
  },
  async showOpenDialog(): Promise<{ filePaths: string[] }> {
    return { filePaths: this.chosen };
  },
  showErrorBox(title: string, sentence: string): void {
    this.errors.push(`${title}: ${sentence}`);
  },
};

export interface MenuLine {
  label?: string;
  role?: string;
  enabled?: boolean;
  submenu?: MenuLine[];
  click?: () => void;
}

export const Menu = {
  shown: [] as MenuLine[],
  buildFromTemplate: (template: MenuLine[]): MenuLine[] => template,
  setApplicationMenu(menu: MenuLine[]): void {
    this.shown = menu;
  },
};

class Picture {
  readonly path: string;
  constructor(path: string) {
    this.path = path;
  }
  resize(): Picture {
    return this;
  }
}
export const nativeImage = { createFromPath: (path: string): Picture => new Picture(path) };

export class Tray extends EventEmitter {
  static put: Tray[] = [];
  readonly picture: Picture;
  tip = '';
  menu: MenuLine[] = [];
  isThere = true;

  constructor(picture: Picture) {
    super();
    this.picture = picture;
    Tray.put.push(this);
  }
  setToolTip(tip: string): void {
    this.tip = tip;
  }
  setContextMenu(menu: MenuLine[]): void {
    this.menu = menu;
  }
  destroy(): void {
    this.isThere = false;
  }
}

export const powerMonitor = Object.assign(new EventEmitter(), { onBatteryPower: false });

/** A process of Node that speaks as one of Electron's does; `kill` only asks, as there. */
class UtilityProcess extends EventEmitter {
  readonly #child;
  pid: number | undefined = undefined;

  constructor(file: string, words: string[], execArgv: string[]) {
    super();
    const shim = new URL('parent-port.ts', import.meta.url).href;
    const options = { serialization: 'advanced' as const, execArgv: ['--import', shim, ...execArgv], env: {} };
    this.#child = fork(file, words, options);
    this.#child.on('spawn', () => {
      this.pid = this.#child.pid;
      this.emit('spawn');
    });
    this.#child.on('message', (message: unknown) => this.emit('message', message));
    this.#child.on('exit', (code) => this.emit('exit', code));
  }
  postMessage(message: unknown): void {
    if (this.#child.connected) this.#child.send({ posted: message } as object);
  }
  kill(): boolean {
    return this.#child.kill();
  }
}
export const utilityProcess = {
  fork: (file: string, words: string[] = [], { execArgv = [] }: { execArgv?: string[] } = {}): UtilityProcess =>
    new UtilityProcess(file, words, execArgv),
};
