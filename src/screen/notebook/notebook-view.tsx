// The notebook: all boils that are kept, the season that they make, and the sap store; recordings are taken in here.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { ask, handFile, said, tell } from '../client/store.ts';
import type { BoilListing } from '../client/types.ts';
import { addressOf, goTo, place } from '../shell/routes.ts';
import { BoilList } from './boil-list.tsx';
import { BoilPage } from './boil-page.tsx';
import { importNews, isRecording, refusal } from './file-news.ts';
import { SeasonPart } from './season-view.tsx';
import { StorePart } from './store-view.tsx';
import { say } from '../language/say.ts';

/** Long enough for any header. */
const HEADER_BYTES = 65_536;

async function startsAsRecording(file: File): Promise<boolean> {
  return isRecording(await file.slice(0, HEADER_BYTES).text());
}

async function knownBoils(): Promise<string[]> {
  const boils = (await ask({ boils: true })) as BoilListing[];
  return boils.map(({ boil }) => boil);
}

interface FileButtonProps {
  word: string;
  take: (file: File) => Promise<void>;
}

function FileButton({ word, take }: FileButtonProps): JSX.Element {
  return (
    <label class="button file-button">
      {word}
      <input
        type="file"
        accept=".jsonl"
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          event.currentTarget.value = '';
          if (file !== undefined) void take(file);
        }}
      />
    </label>
  );
}

function BoilsPart(): JSX.Element {
  const [stamp, setStamp] = useState(0);

  async function take(file: File): Promise<void> {
    const known = await knownBoils();
    const [answer, isOne] = await Promise.all([handFile('import', file), startsAsRecording(file)]);
    said.value = importNews(file.name, answer, isOne, known);
    setStamp((before) => before + 1);
  }

  async function openOnly(file: File): Promise<void> {
    const [answer, isOne] = await Promise.all([handFile('opened', file), startsAsRecording(file)]);
    if (!answer.ok) said.value = { good: false, sentence: refusal(file.name, answer.why, isOne) };
    else if (await tell({ replay: { boil: answer.boil } })) goTo('replay');
  }

  return (
    <>
      <BoilList stamp={stamp} />
      <p class="row boils-files">
        <FileButton word={say('notebook.import')} take={take} />
        <FileButton word={say('notebook.open_file')} take={openOnly} />
      </p>
    </>
  );
}

const PARTS = [
  ['', 'notebook.part.boils', BoilsPart],
  ['season', 'notebook.part.season', SeasonPart],
  ['store', 'notebook.part.store', StorePart],
] as const;

export function NotebookView(): JSX.Element {
  const [part = '', boil] = place.value;
  // What was said of a file means nothing in another view.
  useEffect(() => () => void (said.value = null), []);
  if (part === 'boil' && boil !== undefined) return <BoilPage key={boil} boil={boil} />;
  const [, , Part] = PARTS.find(([name]) => name === part) ?? PARTS[0];
  return (
    <div class="page">
      <h1>{say('notebook.title')}</h1>
      <nav class="row parts" aria-label={say('notebook.parts')}>
        {PARTS.map(([name, word]) => (
          <a
            key={name}
            class="button"
            href={name === '' ? addressOf('notebook') : addressOf('notebook', name)}
            aria-current={name === part ? 'page' : undefined}
          >
            {say(word)}
          </a>
        ))}
        <span class="row parts-beside">
          <a href={addressOf('compare')}>{say('notebook.compare')}</a>
          <a href={addressOf('tune')}>{say('notebook.tune')}</a>
        </span>
      </nav>
      <Part />
    </div>
  );
}
