// All boils that are kept: open as a replay, export, import.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { ask, handFile, said, tell } from '../client/store.ts';
import type { BoilListing } from '../client/types.ts';
import { goTo } from '../shell/routes.ts';
import { dayAndTime, lengthOfTime } from '../words/clock.ts';
import { importNews, isRecording, refusal } from './file-news.ts';

/** Long enough for any header. */
const HEADER_BYTES = 65_536;

async function startsAsRecording(file: File): Promise<boolean> {
  return isRecording(await file.slice(0, HEADER_BYTES).text());
}

async function openReplay(boil: string): Promise<void> {
  if (await tell({ replay: { boil } })) goTo('replay');
}

function BoilRow({ boil }: { boil: BoilListing }): JSX.Element {
  const name = boil.name === '' ? 'A boil without a name' : boil.name;
  return (
    <tr>
      <th scope="row">
        {name}
        {boil.practice && <span class="tag tag-practice">practice</span>}
        {boil.running && <span class="tag">running</span>}
      </th>
      <td>{dayAndTime(boil.started)}</td>
      <td>{lengthOfTime(boil.seconds)}</td>
      <td>{boil.entries} lines</td>
      <td>
        <div class="row">
          <button type="button" aria-label={`Replay ${name}`} onClick={() => void openReplay(boil.boil)}>
            Replay
          </button>
          <a
            class="button"
            aria-label={`Export ${name}`}
            href={`boils/${encodeURIComponent(boil.boil)}.boil.jsonl`}
            download
          >
            Export
          </a>
        </div>
      </td>
    </tr>
  );
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

export function NotebookView(): JSX.Element {
  const [boils, setBoils] = useState<BoilListing[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const load = (): void =>
    void ask({ boils: true }).then(
      (list) => setBoils(list as BoilListing[]),
      (error: Error) => setProblem(error.message),
    );
  useEffect(() => {
    load();
    // What was said of a file means nothing in another view.
    return () => (said.value = null);
  }, []);

  async function take(file: File): Promise<void> {
    const known = (boils ?? []).map((each) => each.boil);
    const [answer, isOne] = await Promise.all([handFile('import', file), startsAsRecording(file)]);
    said.value = importNews(file.name, answer, isOne, known);
    load();
  }

  async function openOnly(file: File): Promise<void> {
    const [answer, isOne] = await Promise.all([handFile('opened', file), startsAsRecording(file)]);
    if (answer.ok) await openReplay(answer.boil);
    else said.value = { good: false, sentence: refusal(file.name, answer.why, isOne) };
  }

  return (
    <div class="page">
      <h1>Notebook</h1>
      <p class="row">
        <FileButton word="Import a recording" take={take} />
        <FileButton word="Open a file without keeping it" take={openOnly} />
      </p>
      {problem !== null && <p class="problem">✕ {problem}</p>}
      {boils?.length === 0 && <p>No boil is kept yet.</p>}
      {boils !== null && boils.length > 0 && (
        <table class="boils">
          <thead>
            <tr>
              <th>Boil</th>
              <th>Begun</th>
              <th>Length</th>
              <th>Kept</th>
              <th>Do</th>
            </tr>
          </thead>
          <tbody>
            {boils.map((boil) => (
              <BoilRow key={boil.boil} boil={boil} />
            ))}
          </tbody>
        </table>
      )}
    </div>
  );
}
