// The tables of the notebook, and the steps that bring an older one forward.

/** Marks a file as ours, beside its version: "PANW" in ASCII. */
export const APPLICATION_ID = 0x50414e57;

/**
 * Step n brings a notebook from version n to n + 1; a step is never changed once it has been given out.
 * `entries` and `last_t` of a boil repeat what its entry rows say, so that lists need not count, and a
 * check can find missing rows. `staged` is an import that is not finished. `taught` is JSON: what the boil taught,
 * and its probes as they were set up then. `forgotten` names what of that a person does not want used any more.
 * A `block` holds entries that are put away together: `packed` is their texts, each with a line end behind it, under
 * zstd; `checksum` is the CRC-32 of that before it was packed. `figures` can be worked out again and are dropped when
 * entries come. A photo's `id` is the beginning of its file's SHA-256. `search` has one row a boil, under its number.
 */
export const MIGRATIONS: readonly string[] = [
  `
  CREATE TABLE boil (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) BETWEEN 1 AND 200),
    kind TEXT NOT NULL CHECK (kind IN ('live', 'practice', 'imported')),
    name TEXT NOT NULL,
    started TEXT NOT NULL,
    started_ms INTEGER NOT NULL,
    header TEXT NOT NULL CHECK (json_valid(header)),
    running INTEGER NOT NULL CHECK (running IN (0, 1)),
    staged INTEGER NOT NULL CHECK (staged IN (0, 1)),
    entries INTEGER NOT NULL CHECK (entries >= 0),
    last_t INTEGER NOT NULL CHECK (last_t >= 0)
  ) STRICT;
  CREATE UNIQUE INDEX boil_running ON boil (kind) WHERE running = 1;
  CREATE TABLE entry (
    boil INTEGER NOT NULL REFERENCES boil (number) ON DELETE CASCADE,
    place INTEGER NOT NULL CHECK (place >= 1),
    t INTEGER NOT NULL CHECK (t >= 0),
    text TEXT NOT NULL,
    PRIMARY KEY (boil, place)
  ) STRICT, WITHOUT ROWID;
  CREATE TABLE setting (
    key TEXT PRIMARY KEY,
    value TEXT NOT NULL CHECK (json_valid(value))
  ) STRICT, WITHOUT ROWID;
  `,
  `
  CREATE TABLE learnt (
    boil INTEGER PRIMARY KEY REFERENCES boil (number) ON DELETE CASCADE,
    taught TEXT NOT NULL CHECK (json_valid(taught))
  ) STRICT;
  CREATE TABLE forgotten (
    boil INTEGER NOT NULL REFERENCES boil (number) ON DELETE CASCADE,
    name TEXT NOT NULL,
    PRIMARY KEY (boil, name)
  ) STRICT, WITHOUT ROWID;
  `,
  `
  CREATE TABLE block (
    boil INTEGER NOT NULL REFERENCES boil (number) ON DELETE CASCADE,
    first INTEGER NOT NULL CHECK (first >= 1),
    entries INTEGER NOT NULL CHECK (entries >= 1),
    first_t INTEGER NOT NULL CHECK (first_t >= 0),
    last_t INTEGER NOT NULL CHECK (last_t >= first_t),
    checksum INTEGER NOT NULL CHECK (checksum BETWEEN 0 AND 4294967295),
    packed BLOB NOT NULL,
    PRIMARY KEY (boil, first)
  ) STRICT;
  CREATE TABLE page (
    boil INTEGER PRIMARY KEY REFERENCES boil (number) ON DELETE CASCADE,
    page TEXT NOT NULL CHECK (json_valid(page))
  ) STRICT;
  CREATE TABLE figures (
    boil INTEGER NOT NULL REFERENCES boil (number) ON DELETE CASCADE,
    key TEXT NOT NULL,
    figures TEXT NOT NULL CHECK (json_valid(figures)),
    PRIMARY KEY (boil, key)
  ) STRICT, WITHOUT ROWID;
  CREATE TABLE collection (
    id TEXT PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 200),
    day TEXT NOT NULL CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    collection TEXT NOT NULL CHECK (json_valid(collection))
  ) STRICT;
  CREATE TABLE photo (
    number INTEGER PRIMARY KEY,
    boil INTEGER NOT NULL REFERENCES boil (number) ON DELETE CASCADE,
    id TEXT NOT NULL CHECK (length(id) = 16),
    type TEXT NOT NULL CHECK (type IN ('image/jpeg', 'image/png', 'image/webp')),
    bytes INTEGER NOT NULL CHECK (bytes BETWEEN 1 AND 10485760),
    added TEXT NOT NULL,
    caption TEXT NOT NULL,
    UNIQUE (boil, id)
  ) STRICT;
  CREATE VIRTUAL TABLE search USING fts5 (
    name, pans, notes, page, tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
  );
  CREATE TRIGGER boil_searched AFTER INSERT ON boil BEGIN
    INSERT INTO search (rowid, name, pans, notes, page) VALUES (
      new.number, new.name,
      (SELECT coalesce(group_concat(json_extract(value, '$.name'), ' '), '') FROM json_each(new.header, '$.pans')),
      '', '');
  END;
  CREATE TRIGGER boil_gone AFTER DELETE ON boil BEGIN
    DELETE FROM search WHERE rowid = old.number;
  END;
  INSERT INTO search (rowid, name, pans, notes, page)
  SELECT number, name,
    (SELECT coalesce(group_concat(json_extract(value, '$.name'), ' '), '') FROM json_each(header, '$.pans')),
    (SELECT coalesce(group_concat(CASE WHEN json_valid(text) THEN json_extract(text, '$.mark.text') END, char(10)), '')
     FROM entry WHERE entry.boil = number AND text LIKE '%"mark"%"note"%'),
    ''
  FROM boil;
  `,
];

export const NOTEBOOK_VERSION = MIGRATIONS.length;
