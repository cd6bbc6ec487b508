// The photos of a boil: looked at, added, taken away.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { BoilPageView, Photo } from '../../protocol/season-messages.ts';
import { said } from '../client/store.ts';
import { dropPhoto } from './page-words.tsx';

const MOST_BYTES = 10 * 1024 * 1024;

async function handPhoto(boil: string, file: File, keepsPlace: boolean): Promise<string | null> {
  if (file.size > MOST_BYTES) return `${file.name} has more than 10 MB, the most that is kept.`;
  const query = new URLSearchParams({ caption: file.name, ...(keepsPlace ? { place: 'keep' } : {}) });
  try {
    const answer = await fetch(`photos/${encodeURIComponent(boil)}?${query}`, {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: file,
    });
    if (answer.ok) return null;
    const told = (await answer.json()) as { why?: string; message?: string };
    return `${file.name}: ${told.why ?? told.message ?? 'it was not taken.'}`;
  } catch {
    return `${file.name} could not be handed over: the program did not answer.`;
  }
}

function Picture({ boil, photo, changed }: { boil: string; photo: Photo; changed: () => void }): JSX.Element {
  const address = `photos/${encodeURIComponent(boil)}/${photo.id}`;
  const name = photo.caption === '' ? 'Photo of this boil' : photo.caption;
  return (
    <figure>
      <a href={address} target="_blank" rel="noreferrer">
        <img src={address} alt={name} loading="lazy" />
      </a>
      <figcaption>
        {name}{' '}
        <button
          type="button"
          aria-label={`Take away ${name}`}
          onClick={() => void dropPhoto(boil, photo.id).then((isGone) => isGone && changed())}
        >
          Take away
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
    <section class="panel" aria-label="Photos">
      <h2>Photos</h2>
      <div class="photos">
        {view.photos.map((photo) => (
          <Picture key={photo.id} boil={view.boil} photo={photo} changed={changed} />
        ))}
      </div>
      <p class="row">
        <label class="button file-button">
          Add photos
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
          <span>Keep in them where they were taken</span>
        </label>
      </p>
      <p class="hint">JPEG, PNG or WebP, to 10 MB. Unless you tick it, place, time and camera are taken out.</p>
    </section>
  );
}
