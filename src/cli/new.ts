import { closeSync, fsyncSync, lstatSync, openSync, rmSync, writeSync } from 'node:fs';
import { type Codes, codes } from '../catalogue/codes.ts';
import { scalarText } from '../plan/editing/scalar-text.ts';
import { hasPlanName } from '../plan/is-plan.ts';
import { nearest } from '../plan/nearest.ts';
import { ofKind, readMeasured, withoutCalculator } from '../plan/quantity.ts';
import { quote, unseenIn } from '../plan/quote.ts';
import { firstLines } from '../plan/starters/first-lines.ts';
import { full } from '../plan/starters/full.ts';
import { type StarterKind, type Starting, starterKinds, usualVan } from '../plan/starters/starting.ts';
import type { DimensionName } from '../plan/units.ts';
import { renderProblems } from '../report/problems.ts';
import { countsText } from '../report/summary.ts';
import { visible } from '../report/visible.ts';
import { outdented, wrapped } from '../report/wrap.ts';
import { checkPlan } from './check-plan.ts';
import { troubleOf } from './replace-file.ts';
import type { Surroundings } from './surroundings.ts';

/** Asks somebody at a terminal; undefined when they do not want to go on. */
export type Ask = (question: string) => Promise<string | undefined>;

export interface NewOptions {
  readonly file?: string;
  readonly kind?: string;
}

const usualFile = 'plan.yaml';

/** Runs `storystick new` and returns its exit code. Without somebody to ask, everything is as usual. */
export async function newPlan(
  options: NewOptions,
  ask: Ask | undefined,
  around: Surroundings,
): Promise<number> {
  const given = kindOf(options.kind);
  if ('wrong' in given) {
    around.complain(given.wrong);
    return 2;
  }
  if (options.file !== undefined && isThere(options.file)) return refuse(options.file, around);
  const answers = ask
    ? await answersOf(options.file, given.kind, ask, around)
    : { file: options.file ?? usualFile, kind: given.kind ?? 'first-lines', ...usual };
  if (!answers) {
    around.complain('nothing was written.\n');
    return 2;
  }
  const { file, kind } = answers;
  if (isThere(file)) return refuse(file, around);
  const text = (kind === 'full' ? full : firstLines)(startingOf(answers));
  const checked = await checkPlan(file, text, around.loadCalculator, around.today?.());
  if (!checked.ok) {
    around.complain(renderProblems(file, text, checked.problems, checked.document.positionOf, 'changed'));
    return 2;
  }
  const trouble = writeNew(file, text);
  if (trouble === 'there') return refuse(file, around);
  if (trouble) {
    const { message, expected } = trouble;
    around.complain(
      `${visible(file)}: ${message}\n${expected === undefined ? '' : `  expected: ${expected}\n`}`,
    );
    return 2;
  }
  const lines = [
    `${visible(file)} is written: ${countsText(checked.report.findings)}`,
    `next: open it in an editor, and run \`storystick check ${visible(shellWord(file))}\``,
    ...(hasPlanName(file)
      ? []
      : ['note: the hook and editors know a plan by a name that ends in `.yaml` or `.yml`']),
  ];
  around.print(`${lines.flatMap((line) => outdented(line, 2, around.width)).join('\n')}\n`);
  return 0;
}

interface Answers {
  readonly file: string;
  readonly kind: StarterKind;
  readonly name: string;
  readonly codes: Codes;
  readonly van: Starting['van'];
}

const usual = { name: 'My van', codes: 'eu', van: usualVan } as const;

function startingOf({ file, name, codes: whose, van }: Answers): Starting {
  return {
    heading: name,
    name: scalarText(name),
    codes: whose,
    units: whose === 'us' ? 'imperial' : 'metric',
    file: shellWord(file),
    van,
  };
}

const shellWord = (file: string): string =>
  /^[\p{L}\p{N}_./:\\-]+$/u.test(file) ? file : `'${file.replaceAll("'", "'\\''")}'`;

function kindOf(
  written: string | undefined,
): { readonly kind: StarterKind | undefined } | { readonly wrong: string } {
  const kind = starterKinds.find((each) => each === written);
  if (written === undefined || kind) return { kind };
  const meant = nearest(written, starterKinds);
  return {
    wrong: `${visible(quote(written))} is not a kind of plan\n${meant === undefined ? '' : `  did you mean: ${meant}\n`}  expected: one of ${starterKinds.join(', ')}\n`,
  };
}

/** Whatever it is, a link that leads nowhere included. */
function isThere(file: string): boolean {
  try {
    lstatSync(file);
    return true;
  } catch {
    return false;
  }
}

function refuse(file: string, around: Surroundings): number {
  around.complain(
    `${visible(file)} is there already, and stays as it is\n  expected: a name that is free, such as \`storystick new my-van.yaml\`\n`,
  );
  return 2;
}

function writeNew(file: string, text: string): 'there' | ReturnType<typeof troubleOf> | undefined {
  let handle: number | undefined;
  try {
    handle = openSync(file, 'wx');
    const bytes = Buffer.from(text, 'utf8');
    for (let written = 0; written < bytes.length; )
      written += writeSync(handle, bytes, written, bytes.length - written);
    fsyncSync(handle);
    return undefined;
  } catch (error) {
    if (handle !== undefined) rmSync(file, { force: true });
    return error instanceof Error && 'code' in error && error.code === 'EEXIST' ? 'there' : troubleOf(error);
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

interface Question<Answer> {
  readonly says: string;
  readonly usual: string;
  /** The answer, or what is wrong with it. */
  readonly read: (text: string) => { readonly answer: Answer } | { readonly wrong: string };
}

async function answersOf(
  file: string | undefined,
  kind: StarterKind | undefined,
  ask: Ask,
  around: Surroundings,
): Promise<Answers | undefined> {
  const how = 'An empty answer takes what stands in brackets; all can be changed later.';
  around.print(`${wrapped(how, around.width).join('\n')}\n`);
  const put = <Answer>(question: Question<Answer>) => answerTo(question, ask, around);
  const chosenFile = file ?? (await put(fileQuestion));
  if (chosenFile === undefined) return undefined;
  const chosenKind =
    kind ?? (await put(oneOf('How much: first-lines, or a full plan', starterKinds, 'first-lines')));
  if (chosenKind === undefined) return undefined;
  const name = await put(nameQuestion);
  if (name === undefined) return undefined;
  const whose = await put(oneOf(`Whose limits: ${codes.join(', ')}`, codes, usual.codes));
  if (whose === undefined) return undefined;
  // A full plan is of one piece: its van goes with its furniture.
  const van = chosenKind === 'full' ? usualVan : await vanOf(put);
  return van && { file: chosenFile, kind: chosenKind, name, codes: whose, van };
}

async function vanOf(
  put: (question: Question<string>) => Promise<string | undefined>,
): Promise<Starting['van'] | undefined> {
  const van: Record<keyof typeof usualVan, string> = { ...usualVan };
  for (const [key, says, kind] of vanQuestions) {
    const answer = await put(quantity(says, kind, usualVan[key]));
    if (answer === undefined) return undefined;
    van[key] = answer;
  }
  return van;
}

const vanQuestions = [
  ['maxMass', 'Permissible maximum mass, from the plate', 'mass'],
  ['frontAxle', 'What the front axle may carry, from the plate', 'mass'],
  ['rearAxle', 'What the rear axle may carry, from the plate', 'mass'],
  ['wheelbase', 'Wheelbase, from axle to axle', 'length'],
  ['behindFrontAxle', 'From the front axle to where the load bay begins', 'length'],
  ['length', 'Length of the load bay', 'length'],
  ['width', 'Width of the load bay, from lining to lining', 'length'],
  ['height', 'Height of the load bay', 'length'],
] as const;

async function answerTo<Answer>(
  { says, usual: usualAnswer, read }: Question<Answer>,
  ask: Ask,
  around: Surroundings,
): Promise<Answer | undefined> {
  for (;;) {
    const text = await ask(`${says} [${usualAnswer}]: `);
    if (text === undefined) return undefined;
    const result = read(text.trim() === '' ? usualAnswer : text.trim());
    if ('answer' in result) return result.answer;
    around.print(`  ${visible(result.wrong)}\n`);
  }
}

const fileQuestion: Question<string> = {
  says: 'File to write',
  usual: usualFile,
  read: (text) =>
    isThere(text) ? { wrong: `${quote(text)} is there already: another name, please` } : { answer: text },
};

const nameQuestion: Question<string> = {
  says: 'What the plan is called',
  usual: usual.name,
  read: (text) =>
    unseenIn(text) === undefined && text.length <= 60
      ? { answer: text }
      : { wrong: 'a name in plain letters, please, of at most 60' },
};

const oneOf = <Word extends string>(
  says: string,
  words: readonly Word[],
  usualWord: Word,
): Question<Word> => ({
  says,
  usual: usualWord,
  read: (text) => {
    const word = words.find((each) => each === text.toLowerCase());
    return word === undefined
      ? { wrong: `${quote(text)} is not among them: one of ${words.join(', ')}, please` }
      : { answer: word };
  },
});

const quantity = (says: string, kind: DimensionName, usualValue: string): Question<string> => ({
  says,
  usual: usualValue,
  read: (text) => {
    const such = `such as \`${usualValue}\``;
    const read = readMeasured(
      text,
      withoutCalculator(() => false),
    );
    if (!read.ok) {
      const { message } = read.refusal;
      return { wrong: `${message.startsWith('`') ? message : `${quote(text)} ${message}`}: ${such}, please` };
    }
    const fitting = ofKind(read.value, text, [kind]);
    if (!fitting.ok) return { wrong: `${fitting.refusal.message}: ${such}, please` };
    return fitting.value.value > 0 ? { answer: text } : { wrong: `more than zero, please, ${such}` };
  },
});
