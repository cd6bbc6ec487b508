// Reads alarm stories: `== title`, then a line for each input with its second, each followed by the whole picture expected (`>`).
import { readdirSync, readFileSync } from 'node:fs';

export interface Step {
  second: number;
  /** Empty where only time passes. */
  input: string;
  picture: string[];
}

export interface Story {
  title: string;
  steps: Step[];
}

const folder = new URL('../../../fixtures/alarm-stories/', import.meta.url);

/** All stories of the files `KIND-….story.txt`, with the file's name. */
export function storiesOf(kind: 'pair' | 'boil'): { file: string; story: Story }[] {
  return readdirSync(folder)
    .filter((name) => name.startsWith(`${kind}-`) && name.endsWith('.story.txt'))
    .flatMap((file) => readStories(readFileSync(new URL(file, folder), 'utf8')).map((story) => ({ file, story })));
}

/** Throws at a line that is no part of a story: a picture that nobody looks at would be worse. */
function readStories(text: string): Story[] {
  const stories: Story[] = [];
  for (const line of text.split('\n').map((one) => one.trim())) {
    const story = stories.at(-1);
    const step = story?.steps.at(-1);
    const [, second, input] = /^(\d+)(?: +(.+))?$/u.exec(line) ?? [];
    if (line === '' || line.startsWith('#')) continue;
    if (line.startsWith('== ')) stories.push({ title: line.slice(3), steps: [] });
    else if (line.startsWith('> ') && step !== undefined) step.picture.push(line.slice(2));
    else if (second !== undefined && story !== undefined) {
      story.steps.push({ second: Number(second), input: input ?? '', picture: [] });
    } else throw new Error(`not a line of a story: ${line}`);
  }
  return stories;
}
