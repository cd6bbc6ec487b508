// Raw lines of a board as they came, each piece marked with what it is read as: by colour, by a line under it, and in words.
import type { JSX } from 'preact';
import type { LineSpan, ProposedLine } from '../client/types.ts';
import { spanWords } from '../words/setup-words.ts';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';

function pieces({ text, spans }: ProposedLine): (string | LineSpan)[] {
  const parts: (string | LineSpan)[] = [];
  let at = 0;
  for (const span of spans) {
    if (span.start > at) parts.push(text.slice(at, span.start));
    parts.push(span);
    at = span.end;
  }
  if (at < text.length) parts.push(text.slice(at));
  return parts;
}

function RawLine({ line }: { line: ProposedLine }): JSX.Element {
  const words = line.spans.flatMap((span) => spanWords(span, line.text) ?? []);
  return (
    <li>
      <code class="raw">
        {pieces(line).map((part, place) =>
          typeof part === 'string' ? (
            <span key={place}>{part}</span>
          ) : (
            <mark key={place} class={part.is === 'value' ? 'raw-value' : 'raw-left'}>
              {line.text.slice(part.start, part.end)}
            </mark>
          ),
        )}
      </code>
      <small>{line.why === null ? words.join(' · ') : hostWords(line.why)}</small>
    </li>
  );
}

export function RawLines({ lines }: { lines: readonly ProposedLine[] }): JSX.Element {
  return (
    <ol class="raw-lines" aria-label={say('onboarding.sends')}>
      {lines.map((line, place) => (
        <RawLine key={`${place} ${line.text}`} line={line} />
      ))}
    </ol>
  );
}
