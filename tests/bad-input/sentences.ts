import { readFileSync } from 'node:fs';

/** A piece of text in a source file that a user may come to read; `…` stands for what is filled in. */
export interface Sentence {
  readonly file: string;
  readonly pieces: readonly string[];
}

/** The files that a source file imports from its own folder, and theirs, itself included. */
export function importedFrom(entry: URL, folder: URL): URL[] {
  const found = new Map<string, URL>();
  const waiting = [entry];
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    if (found.has(file.href) || !file.href.startsWith(folder.href)) continue;
    found.set(file.href, file);
    const source = readFileSync(file, 'utf8');
    for (const [, name = ''] of source.matchAll(/from '(\.[^']+)'/g)) waiting.push(new URL(name, file));
  }
  return [...found.values()];
}

/**
 * The sentences of a TypeScript file: its string and template literals that hold at least two words. Reads the source
 * character by character, since a regular expression would take an apostrophe in a comment for a string.
 */
export function sentencesOf(file: URL): Sentence[] {
  const source = readFileSync(file, 'utf8');
  const literals: string[][] = [];
  let at = 0;

  const skipTo = (end: string) => {
    const found = source.indexOf(end, at);
    at = found === -1 ? source.length : found + end.length;
  };
  const readString = (quote: string): string => {
    let text = '';
    for (at += 1; at < source.length && source[at] !== quote; at += 1) {
      if (source[at] === '\\') at += 1;
      text += source[at] ?? '';
    }
    at += 1;
    return text;
  };
  const readTemplate = () => {
    const pieces = [''];
    for (at += 1; at < source.length && source[at] !== '`'; ) {
      if (source.startsWith('${', at)) {
        at += 2;
        readCode('}');
        pieces.push('');
      } else {
        if (source[at] === '\\') at += 1;
        pieces.push((pieces.pop() ?? '') + (source[at] ?? ''));
        at += 1;
      }
    }
    at += 1;
    literals.push(pieces);
  };
  const isRegularExpression = () => /(?:[(,=:[!&|?{};\n]|return|=>)\s*$/.test(source.slice(0, at));
  const readRegularExpression = () => {
    let inClass = false;
    for (at += 1; at < source.length && (inClass || source[at] !== '/'); at += 1) {
      if (source[at] === '\\') at += 1;
      else if (source[at] === '[') inClass = true;
      else if (source[at] === ']') inClass = false;
    }
    at += 1;
  };
  const readCode = (end?: string) => {
    for (let depth = 0; at < source.length; ) {
      const character = source[at] ?? '';
      if (character === end && depth === 0) break;
      if (source.startsWith('//', at)) skipTo('\n');
      else if (source.startsWith('/*', at)) skipTo('*/');
      else if (character === "'" || character === '"') literals.push([readString(character)]);
      else if (character === '`') readTemplate();
      else if (character === '/' && isRegularExpression()) readRegularExpression();
      else {
        if (character === '{') depth += 1;
        if (character === '}') depth -= 1;
        at += 1;
      }
    }
    at += 1;
  };
  readCode();

  const name = file.pathname.replace(/^.*\/src\//, 'src/');
  return literals
    .filter((pieces) => /\p{L}[\p{L},:]* \p{L}/u.test(pieces.join(' … ')) && !pieces[0]?.startsWith('./'))
    .map((pieces) => ({ file: name, pieces }));
}

/** Matches a text that holds the sentence, with anything where something is filled in. */
export const patternOf = ({ pieces }: Sentence): RegExp =>
  new RegExp(pieces.map((piece) => piece.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('[^\\n]*'), 'u');
