// Writes a boil of the notebook out as a recording, byte for byte as it was kept.
import type { Notebook } from './contract.ts';

/** The lines of the recording, each with its line end: the header, then every entry that is kept now. */
export function* exportRecording(notebook: Notebook, boil: string): Generator<string> {
  yield `${notebook.headerText(boil)}\n`;
  for (const text of notebook.entries(boil)) yield `${text}\n`;
}
