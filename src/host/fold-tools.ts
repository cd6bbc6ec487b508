// What the fold is given from outside core: how lines are read and how a header is checked.
import type { FoldTools } from '../core/boil/line-reading.ts';
import { readLine } from '../ingest/read-line.ts';
import { checkHeader } from '../protocol/header-schema.ts';

export const foldTools: FoldTools = { readLine, checkHeader };
