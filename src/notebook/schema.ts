// The tables of the notebook, and the steps that bring an older one forward.

/** Marks a file as ours, beside its version: "PANW" in ASCII. */
export const APPLICATION_ID = 0x50414e57;

/**
 * Step n brings a notebook from version n to n + 1; a step is never changed once it has been given out.
 * `entries` and `last_t` of a boil repeat what its entry rows say, so that lists need not count, and a
 * check can find missing rows. `staged` is an import that is not finished. `taught` is JSON: what the boil taught,
 * and its probes as they were set up then. `forgotten` names what of that a person does not want used any more.
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
];

export const NOTEBOOK_VERSION = MIGRATIONS.length;
