// Takes what comes on standard input into a notebook, and prints the most memory that this took, MB.
import { takeIn } from '../../src/host/import/take-in.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';

const [, , folder = ''] = process.argv;
const notebook = openNotebook(folder);
await takeIn(notebook, process.stdin, 'the pipe').catch((error: Error) => process.stderr.write(`${error.message}\n`));
notebook.close();
// On Linux and macOS Node reports it in KB.
process.stdout.write(String(process.resourceUsage().maxRSS / 1024));
process.exit();
