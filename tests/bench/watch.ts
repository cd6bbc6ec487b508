// What `watch` costs: processor time and memory of the program and of the processes that read its ports, sixteen probes once a second.
import { readFileSync, readdirSync } from 'node:fs';
import { plugIn } from '../cli/pseudo-terminals.ts';
import { Program, ownFolder } from '../cli/program.ts';

const PROBES = 16;
const WARM_UP_S = 10;
const SECONDS = 60;
/** Linux counts processor time in hundredths of a second. */
const TICKS_PER_S = 100;
const KIB_PER_MIB = 1024;

const names = Array.from({ length: PROBES }, (_, i) => i + 1);
const pause = (seconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, seconds * 1000));

/** `words`: how many seconds, 60 unless said. Linux only: it reads /proc. */
export async function watch(words: readonly string[]): Promise<void> {
  const seconds = Number(words[0] ?? SECONDS);
  const own = ownFolder();
  const board = await plugIn(own.path('a'));
  const file = own.write('setup.json', {
    name: 'Tarn Hollow, invented',
    ports: [{ id: 'A', path: board.path }],
    probes: names.map((n) => ({ id: `A/${n}`, port: 'A', channel: `T${n}` })),
    pans: names.map((n) => ({ id: `p${n}`, name: `Pan ${n}`, probe: `A/${n}` })),
  });
  const program = new Program('watch', '--data', own.path('data'), '--setup', file, '--json');
  let said = 0;
  const timer = setInterval(() => {
    said += 1;
    board.feed(names.map((n) => `T${n}=${(97 + n / 10 + 0.05 * Math.sin(said * n)).toFixed(2)}`).join(' '));
  }, 1000);
  try {
    await program.line(({ kind }) => kind === 'watching');
    await pause(WARM_UP_S);
    const pids = family(program.process.pid ?? 0);
    const before = pids.map(costs);
    await pause(seconds);
    console.log(`  ${PROBES} probes, one line a second, ${seconds} s`);
    for (const [i, pid] of pids.entries()) {
      const after = costs(pid);
      const percent = ((after.cpuS - (before[i]?.cpuS ?? 0)) / seconds) * 100;
      const name = i === 0 ? 'the program' : 'the reader of the port';
      const from = before[i]?.mib.toFixed(0) ?? '';
      console.log(
        `  ${name.padEnd(24)}${percent.toFixed(2).padStart(6)} % of one core   ${from} to ${after.mib.toFixed(0)} MiB`,
      );
    }
  } finally {
    clearInterval(timer);
    await program.kill('SIGTERM');
    await board.pull();
    own.remove();
  }
}

/** A process and those that it started. */
function family(pid: number): number[] {
  const others = readdirSync('/proc')
    .map(Number)
    .filter((each) => each > 0 && parentOf(each) === pid);
  return [pid, ...others];
}

function parentOf(pid: number): number | null {
  try {
    return Number(fieldsOf(pid)[1]);
  } catch {
    return null;
  }
}

/** From the state on: the name before it may hold blanks (proc(5)). */
function fieldsOf(pid: number): string[] {
  return readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1)?.split(' ') ?? [];
}

function costs(pid: number): { cpuS: number; mib: number } {
  const fields = fieldsOf(pid);
  const resident = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return { cpuS: (Number(fields[11]) + Number(fields[12])) / TICKS_PER_S, mib: Number(resident) / KIB_PER_MIB };
}
