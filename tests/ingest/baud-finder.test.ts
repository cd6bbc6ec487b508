// How a baud rate is found, over the serial library's own stand-in for a port, which garbles at any rate but one.
// A pseudo terminal has no baud: whatever it is opened with, its bytes come through whole, so it can prove nothing here.
import { SerialPortMock } from 'serialport';
import { afterEach, expect, test } from 'vitest';
import { BaudFinder, USUAL_BAUDS } from '../../src/ingest/baud-finder.ts';
import type { OpenPort } from '../../src/ingest/open-port.ts';
import { handTimekeeper } from './heard.ts';
import { until } from './until.ts';

afterEach(() => SerialPortMock.binding.reset());

/** What a UART that samples at another rate makes of the bytes: each bit is looked at at the wrong moment. */
function garbled(text: string, spoken: number, opened: number): Buffer {
  if (spoken === opened) return Buffer.from(text, 'latin1');
  // 8N1: a start bit (0), eight bits from the lowest, a stop bit (1).
  const bits = [...Buffer.from(text, 'latin1')].flatMap((byte) => [
    0,
    ...Array.from({ length: 8 }, (_, i) => (byte >> i) & 1),
    1,
  ]);
  const at = (time: number): number => bits[Math.floor(time * spoken)] ?? 1;
  const bytes: number[] = [];
  const end = bits.length / spoken;
  for (let time = 0; time < end;) {
    if (at(time) === 1) time += 1 / (16 * opened);
    else {
      bytes.push(Array.from({ length: 8 }, (_, i) => at(time + (1.5 + i) / opened) << i).reduce((a, b) => a | b, 0));
      time += 9.5 / opened;
    }
  }
  return Buffer.from(bytes);
}

/** A board that speaks at one rate and says its line whenever the port is opened, as often as told. */
function boardAt(
  spoken: number | null,
  lines = 'T1=98.25C T2=97.10C\r\n'.repeat(6),
): { openPort: OpenPort; openNow(): number } {
  let openNow = 0;
  SerialPortMock.binding.createPort('/dev/invented');
  const openPort: OpenPort = (path, baudRate, events) =>
    new Promise((resolve, reject) => {
      const port = new SerialPortMock({ path, baudRate }, (error) => {
        if (error) return reject(error);
        openNow += 1;
        port.on('data', events.bytes);
        if (spoken !== null) port.port?.emitData(garbled(lines, spoken, baudRate));
        resolve({
          close: () =>
            new Promise((closed) => {
              openNow -= 1;
              port.close(() => closed());
            }),
        });
      });
    });
  return { openPort, openNow: () => openNow };
}

async function find(board: ReturnType<typeof boardAt>, path = '/dev/invented') {
  const timekeeper = handTimekeeper();
  const said = {
    tried: [] as number[],
    found: undefined as number | null | undefined,
    heard: false,
    waits: [] as string[],
  };
  const finder = new BaudFinder(
    { path, openPort: board.openPort, timekeeper },
    {
      tries: (baud) => said.tried.push(baud),
      waits: (why) => said.waits.push(why),
      found: (baud, heard) => Object.assign(said, { found: baud, heard }),
    },
  );
  return { timekeeper, said, finder };
}

/** Time passes only when nothing more happens by itself. */
async function untilFound({ timekeeper, said }: Awaited<ReturnType<typeof find>>): Promise<void> {
  await until('the search to end', () => {
    void timekeeper.pass(100);
    return said.found !== undefined;
  });
}

test.each(USUAL_BAUDS)('a board that speaks at %i baud is found at it, and the port is given back', async (spoken) => {
  const board = boardAt(spoken);
  const search = await find(board);
  await untilFound(search);
  expect(search.said.found).toBe(spoken);
  expect(search.said.tried).toEqual(USUAL_BAUDS.slice(0, USUAL_BAUDS.indexOf(spoken) + 1));
  await search.finder.stop();
  expect(board.openNow()).toBe(0);
});

test('a board that speaks at none of them, and one that is silent, are told apart', async () => {
  const odd = await find(boardAt(31_250));
  await untilFound(odd);
  expect(odd.said).toMatchObject({ found: null, heard: true, tried: USUAL_BAUDS });
  SerialPortMock.binding.reset();
  const silent = await find(boardAt(null));
  await untilFound(silent);
  expect(silent.said).toMatchObject({ found: null, heard: false, tried: USUAL_BAUDS });
});

test('a port that is not there is waited for with a sentence, until it is given up', async () => {
  const board = boardAt(9600);
  const search = await find(board, '/dev/not-there');
  await until('the sentence', () => search.said.waits.length > 0);
  expect(search.said.found).toBeUndefined();
  await search.finder.stop();
  expect(board.openNow()).toBe(0);
});
