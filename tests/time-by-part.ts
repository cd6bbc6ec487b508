// Prints how long the tests of each folder took, added up over the processes that run beside each other.
import type { Reporter, TestModule } from 'vitest/node';

export default class TimeByPart implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const parts = new Map<string, { files: number; ms: number }>();
    for (const module of modules) {
      const [, folder = ''] = module.relativeModuleId.split('/');
      const part = parts.get(folder) ?? { files: 0, ms: 0 };
      const { duration, collectDuration } = module.diagnostic();
      parts.set(folder, { files: part.files + 1, ms: part.ms + duration + collectDuration });
    }
    const longestFirst = [...parts].sort(([, one], [, other]) => other.ms - one.ms);
    const rows = longestFirst.map(([folder, { files, ms }]) => {
      const seconds = (ms / 1000).toFixed(0).padStart(6);
      return `${seconds} s  ${folder} (${files} ${files === 1 ? 'file' : 'files'})`;
    });
    console.log(`\n  Time by part\n${rows.join('\n')}\n`);
  }
}
