// Every language says every message, with the same values, and no message is missing, unused or asked for with other values.
import { readFileSync, readdirSync } from 'node:fs';
import { TYPE, parse } from '@formatjs/icu-messageformat-parser';
import type { MessageFormatElement } from '@formatjs/icu-messageformat-parser';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { settingsSchema } from '../../src/protocol/messages.ts';

const PROJECT = new URL('../../', import.meta.url);
const FOLDER = new URL('src/language/', PROJECT);

const catalogues = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.json'))
  .map((file) => ({
    tag: file.slice(0, -'.json'.length),
    text: readFileSync(new URL(file, FOLDER), 'utf8'),
  }))
  .map(({ tag, text }) => ({ tag, text, messages: JSON.parse(text) as Record<string, string> }));
const english = catalogues.find(({ tag }) => tag === 'en')!.messages;

/** A message's parts. Throws with its name where it has no ICU form: the parser says what is wrong, and not where. */
function partsOf(key: string, message: string): MessageFormatElement[] {
  try {
    return parse(message);
  } catch (error) {
    throw new Error(`${key}: ${error instanceof Error ? error.message : String(error)}: ${message}`, { cause: error });
  }
}

/** The values and marks that a message names, each once, sorted. */
function namesIn(elements: readonly MessageFormatElement[]): string[] {
  const names = elements.flatMap((element): string[] => {
    if (element.type === TYPE.literal || element.type === TYPE.pound) return [];
    if (element.type === TYPE.tag) return [`<${element.value}>`, ...namesIn(element.children)];
    const inside = element.type === TYPE.select || element.type === TYPE.plural ? Object.values(element.options) : [];
    return [element.value, ...inside.flatMap(({ value }) => namesIn(value))];
  });
  return [...new Set(names)].sort();
}

/** What a message chooses by: "heat: propane" of {heat, select, propane {…} other {…}}. */
function choicesIn(elements: readonly MessageFormatElement[]): string[] {
  return elements.flatMap((element): string[] => {
    if (element.type === TYPE.tag) return choicesIn(element.children);
    if (element.type !== TYPE.select && element.type !== TYPE.plural) return [];
    const own = element.type === TYPE.select ? Object.keys(element.options) : [];
    return [
      ...own.map((option) => `${element.value}: ${option}`),
      ...Object.values(element.options).flatMap(({ value }) => choicesIn(value)),
    ];
  });
}

const sources = ['src', 'electron']
  .flatMap((room) =>
    readdirSync(new URL(`${room}/`, PROJECT), { recursive: true, encoding: 'utf8' }).map((path) => `${room}/${path}`),
  )
  .filter((path) => /\.tsx?$/.test(path) && !path.endsWith('.d.ts'))
  .map((path) => {
    const text = readFileSync(new URL(path, PROJECT), 'utf8');
    const kind = path.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
    return { path, tree: ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true, kind) };
  });

/** What a person reads: the screen, what is printed, and the desktop window's own words. */
const SHOWN =
  /^(src\/screen\/|src\/host\/export\/(report-|labels-|figure-words|mark-line|sheet|printable)|electron\/(?!bridge|guard|readers|packaging))/u;
const shown = sources.filter(({ path }) => SHOWN.test(path));

function each(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node);
  ts.forEachChild(node, (child) => each(child, visit));
}

/** The names of an object literal's fields; null when some cannot be told from the text. */
function fieldsOf(node: ts.Expression | undefined): string[] | null {
  if (node === undefined) return [];
  if (!ts.isObjectLiteralExpression(node)) return null;
  const names = node.properties.map((property) =>
    property.name !== undefined && (ts.isIdentifier(property.name) || ts.isStringLiteral(property.name))
      ? property.name.text
      : null,
  );
  return names.includes(null) ? null : (names as string[]).sort();
}

/** The texts that an expression may be: both of a choice between two. None when it cannot be told. */
function textsOf(node: ts.Expression | undefined): string[] {
  if (node === undefined) return [];
  if (ts.isStringLiteralLike(node)) return [node.text];
  return ts.isConditionalExpression(node) ? [...textsOf(node.whenTrue), ...textsOf(node.whenFalse)] : [];
}

describe('catalogues', () => {
  test.each(catalogues)('$tag: sorted by name, each once', ({ text, messages }) => {
    expect(text).toBe(`${JSON.stringify(Object.fromEntries(Object.entries(messages).sort()), null, 2)}\n`);
  });

  test.each(catalogues)('$tag: the same messages as English, with the same values', ({ messages }) => {
    const shape = (from: Record<string, string>): Record<string, string[]> =>
      Object.fromEntries(Object.entries(from).map(([key, message]) => [key, namesIn(partsOf(key, message))]));
    expect(shape(messages)).toEqual(shape(english));
    expect(Object.keys(messages).filter((key) => messages[key]!.trim() === '')).toEqual([]);
  });

  test.each(catalogues)(
    '$tag: one kind of apostrophe, the curly one; a straight one only quotes a brace',
    ({ messages }) => {
      const isStraight = (message: string): boolean => /\p{L}'|'\p{L}/u.test(message);
      expect(Object.keys(messages).filter((key) => isStraight(messages[key]!))).toEqual([]);
    },
  );

  test.each(catalogues)('$tag can be chosen in Settings', ({ tag }) => {
    expect(settingsSchema.parse({ language: tag }).language).toBe(tag);
  });

  test('what the program says to call somebody is a call, on the screen and on paper', () => {
    // An alarm is what warns of carbon monoxide; a refusal names what another program sent.
    const others = /^(cautions\.propane|help\.caution\.carbon_monoxide|host\.refused\..*)$/u;
    const french = catalogues.find(({ tag }) => tag === 'fr')!.messages;
    // What a form chooses by, before its brace, is said to nobody.
    const isAlarm = (message: string): boolean => /\balarme?s?\b/iu.test(message.replaceAll(/\w+ \{/gu, '{'));
    const said = [english, french].flatMap((messages) =>
      Object.entries(messages).filter(([key, message]) => !others.test(key) && isAlarm(message)),
    );
    expect(said).toEqual([]);
  });

  test('French sets its high punctuation off by a space that does not break, and writes no straight apostrophe', () => {
    const french = catalogues.find(({ tag }) => tag === 'fr')!.messages;
    const wrong = Object.entries(french).filter(([, message]) => {
      const words = message.replaceAll(/\{[^{}]*\}/gu, 'x').replaceAll(/<[^>]*>/gu, '');
      return /\p{L}'\p{L}|[^\s\d\u00a0\u202f][;!?»]| [:;!?»]|« /u.test(words.replaceAll(/[!?;]{2,}/gu, '!'));
    });
    expect(wrong).toEqual([]);
  });

  test('English keeps a number and its unit on one line; what the host writes is tied when it is said', () => {
    const wrong = Object.entries(english).filter(([key, message]) =>
      key.startsWith('host.')
        ? message.includes('\u00a0')
        : /[}\d#] (?:min|s|h|%|°C|°F|°Bx|mm|kg|hPa|kPa)(?![\p{L}\d/])/u.test(message),
    );
    expect(wrong).toEqual([]);
  });

  test('French keeps a number and its unit on one line', () => {
    const french = catalogues.find(({ tag }) => tag === 'fr')!.messages;
    const wrong = Object.entries(french).filter(([, message]) =>
      /[}\d#] (?:min|s|h|kg|kg\/h|L|Mo|m|mm|po|°C|°F|°Bx|°Brix|%|ms|ohms|bauds|fois)(?![\p{L}\d/])/u.test(message),
    );
    expect(wrong).toEqual([]);
  });

  test('French has one word for a pan and one for sap, as its list of words says', () => {
    const french = catalogues.find(({ tag }) => tag === 'fr')!.messages;
    const others =
      /(?<!\p{L})(?:cuve|chaudron|récipient|marmite|panne)s?(?!\p{L})|eau (?:d’érable|de bouleau|sucrée)/iu;
    expect(Object.entries(french).filter(([, message]) => others.test(message))).toEqual([]);
  });

  test.each(catalogues)('$tag: chooses by each word that English chooses by', ({ messages }) => {
    const wrong = Object.entries(english).flatMap(([key, message]) => {
      const chosen = new Set(choicesIn(partsOf(key, messages[key]!)));
      return choicesIn(partsOf(key, message))
        .filter((choice) => !chosen.has(choice))
        .map((choice) => `${key}: ${choice}`);
    });
    expect(wrong).toEqual([]);
  });

  test.each(catalogues.filter(({ tag }) => tag !== 'en'))(
    '$tag: a button or a call that is named in quotes is named as it is written there',
    ({ tag, messages }) => {
      const keys = Object.keys(english);
      const quoted = (label: string): string => (tag === 'fr' ? `«\u00a0${label}\u00a0»` : label);
      const wrong = Object.entries(english).flatMap(([key, message]) =>
        [...message.matchAll(/“([^”{}]+)”/gu)].flatMap(([, label]) => {
          const labels = keys
            .filter((one) => english[one] === label && !one.startsWith('paper.'))
            .map((one) => messages[one]!);
          const isNamed = labels.length === 0 || labels.some((one) => messages[key]!.includes(quoted(one)));
          return isNamed ? [] : [`${key}: ${label}`];
        }),
      );
      expect(wrong).toEqual([]);
    },
  );

  test('every message is used, by its whole name', () => {
    const used = new Set<string>();
    for (const { tree } of sources) each(tree, (node) => void (ts.isStringLiteralLike(node) && used.add(node.text)));
    // A sentence of the host is found by its form, and a catalogue's own name by whoever lists the catalogues.
    expect(Object.keys(english).filter((key) => !key.startsWith('host.') && !used.has(key))).toEqual([]);
  });

  test('what is said is given the values that the message names', () => {
    const wrong: string[] = [];
    for (const { path, tree } of sources) {
      each(tree, (node) => {
        if (!ts.isCallExpression(node) || !/(^|\.)(say|sayDrawn)$/.test(node.expression.getText())) return;
        const [key, values] = node.arguments;
        for (const text of textsOf(key)) {
          const given = fieldsOf(values);
          const named = namesIn(parse(english[text] ?? '')).map((name) => name.replaceAll(/[<>]/gu, ''));
          if (given !== null && given.join() !== named.sort().join()) wrong.push(`${path}: ${text} is given ${given}`);
        }
      });
    }
    expect(wrong).toEqual([]);
  });
});

const READ_ALOUD = /^(label|title|placeholder|aria-label|aria-description|alt|hint|unit|legend|word|name)$/;
const WORDS = /\p{L}{2,}/u;
/** Several words with a space between, that are neither a class list nor a path. */
const SENTENCE = /^\p{Lu}?[\p{L}’,.;:%…-]+ [\p{L}’,.;:%…-]+/u;

describe('screen, paper and window', () => {
  test('hold no words but by the catalogue', () => {
    const found: string[] = [];
    for (const { path, tree } of shown) {
      each(tree, (node) => {
        const say = (text: string): void => {
          const { line } = tree.getLineAndCharacterOfPosition(node.getStart());
          found.push(`${path}:${line + 1}: ${text.trim()}`);
        };
        if (ts.isJsxText(node) && !isNamed(node) && WORDS.test(node.text.replaceAll(/&\w+;/gu, ''))) say(node.text);
        if (!ts.isStringLiteralLike(node) || ts.isImportDeclaration(node.parent)) return;
        const attribute = ts.isJsxAttribute(node.parent) ? node.parent.name.getText() : null;
        if (attribute !== null && READ_ALOUD.test(attribute) && WORDS.test(node.text)) say(node.text);
        if (attribute === null && SENTENCE.test(node.text) && !isThrown(node) && !isOfStyle(node) && !isKey(node))
          say(node.text);
      });
    }
    expect(found).toEqual([]);
  });
});

/** The key of a table, or a pattern of what the host writes in English: looked up, and never shown. */
const isKey = (node: ts.Node): boolean =>
  (ts.isPropertyAssignment(node.parent) && node.parent.name === node) ||
  (ts.isCallExpression(node.parent) && node.parent.expression.getText() === 'pattern');

/** What is thrown is told to whoever mends the program, not to who boils. */
function isThrown(node: ts.Node): boolean {
  for (let up: ts.Node | undefined = node; up !== undefined; up = up.parent) if (ts.isThrowStatement(up)) return true;
  return false;
}

/** The program's own name, and what is printed on a key, are the same in every language. */
const isNamed = (node: ts.JsxText): boolean =>
  node.text.trim() === 'Panwarden' ||
  (ts.isJsxElement(node.parent) && node.parent.openingElement.tagName.getText() === 'kbd');

/** What is only a class list is made of names with hyphens. */
const CLASS_LIST = /^[a-z]+(?: [a-z]+-[a-z-]+)+$/u;

/** Class lists, queries of elements and canvas fonts are words to no one. */
function isOfStyle(node: ts.StringLiteralLike): boolean {
  if (CLASS_LIST.test(node.text)) return true;
  for (let up: ts.Node = node; up.parent !== undefined; up = up.parent) {
    if (
      ts.isJsxAttribute(up) &&
      /^(class|style|d|viewBox|points|transform|role|sandbox|sizes)$/.test(up.name.getText())
    )
      return true;
    if (
      ts.isCallExpression(up) &&
      /(querySelector|querySelectorAll|closest|matches|matchMedia|getContext)$/.test(up.expression.getText())
    )
      return true;
  }
  return false;
}
