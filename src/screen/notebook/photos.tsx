// The photos of a boil: looked at, added, taken away.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { BoilPageView, Photo } from '../../protocol/season-messages.ts';
import { said } from '../client/store.ts';
import { dropPhoto } from './page-words.tsx';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';

const MOST_BYTES = 10 * 1024 * 1024;

async function handPhoto(boil: string, file: File, keepsPlace: boolean): Promise<string | null> {
  if (file.size > MOST_BYTES) return say('notebook.photo.too_big', { file: file.name });
  const query = new URLSearchParams({ caption: file.name, ...(keepsPlace ? { place: 'keep' } : {}) });
  try {
    const answer = await fetch(`photos/${encodeURIComponent(boil)}?${query}`, {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: file,
    });
    if (answer.ok) return null;
    const told = (await answer.json()) as { why?: string; message?: string };
    const why = told.why ?? told.message;
    return say('notebook.file_why', {
      file: file.name,
      why: why === undefined ? say('notebook.photo.not_taken') : hostWords(why),
    });
  } catch {
    return say('notebook.photo.no_answer', { file: file.name });
  }
}

function Picture({ boil, photo, changed }: { boil: string; photo: Photo; changed: () => void }): JSX.Element {
  const address = `photos/${encodeURIComponent(boil)}/${photo.id}`;
  const name = photo.caption === '' ? say('notebook.photo.of') : photo.caption;
  return (
    <figure>
      <a href={address} target="_blank" rel="noreferrer">
        <img src={address} alt={name} loading="lazy" />
      </a>
      <figcaption>
        {name}{' '}
        <button
          type="button"
          aria-label={say('notebook.photo.take_away_of', { name })}
          onClick={() => void dropPhoto(boil, photo.id).then((isGone) => isGone && changed())}
        >
          {say('notebook.photo.take_away')}
        </button>
      </figcaption>
    </figure>
  );
}

export function Photos({ view, changed }: { view: BoilPageView; changed: () => void }): JSX.Element {
  const [keepsPlace, setKeepsPlace] = useState(false);

  async function add(files: FileList | null): Promise<void> {
    for (const file of files ?? []) {
      const why = await handPhoto(view.boil, file, keepsPlace);
      if (why !== null) said.value = { good: false, sentence: why };
    }
    changed();
  }

  return (
    <section class="panel" aria-label={say('notebook.photos')}>
      <h2>{say('notebook.photos')}</h2>
      <div class="photos">
        {view.photos.map((photo) => (
          <Picture key={photo.id} boil={view.boil} photo={photo} changed={changed} />
        ))}
      </div>
      <p class="row">
        <label class="button file-button">
          {say('notebook.photos.add')}
          <input
            type="file"
            multiple
            accept="image/jpeg,image/png,image/webp"
            onChange={(event) => {
              const field = event.currentTarget;
              void add(field.files).then(() => (field.value = ''));
            }}
          />
        </label>
        <label class="check">
          <input
            type="checkbox"
            checked={keepsPlace}
            onChange={(event) => setKeepsPlace(event.currentTarget.checked)}
          />
          <span>{say('notebook.photos.place')}</span>
        </label>
      </p>
      <p class="hint">{say('notebook.photos.how')}</p>
    </section>
  );
}
