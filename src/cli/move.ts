import { type Direction, directions, type Move, moveThing } from '../plan/editing/move-thing.ts';
import { writtenPath } from '../plan/editing/plan-path.ts';
import type { Distance } from '../plan/editing/shifted.ts';
import { loadPlan } from '../plan/load.ts';
import { ofKind, readMeasured, withoutCalculator } from '../plan/quantity.ts';
import { quote } from '../plan/quote.ts';
import { visible } from '../report/visible.ts';
import { edit, type Made } from './edit.ts';
import type { Surroundings } from './surroundings.ts';

export type MoveOptions = { readonly dryRun: boolean } & { readonly [direction in Direction]?: string };

/** Runs `storystick move` and returns its exit code. */
export async function move(
  file: string,
  thing: string,
  options: MoveOptions,
  around: Surroundings,
): Promise<number> {
  const asked = movesOf(options);
  if ('wrong' in asked) {
    around.complain(asked.wrong);
    return 2;
  }
  return edit(file, (text) => moved(text, thing, asked.moves, around), options, around);
}

async function moved(
  text: string,
  thing: string,
  moves: readonly Move[],
  around: Surroundings,
): Promise<Made> {
  const { document, plan, problems } = await loadPlan(text, around.loadCalculator);
  if (!plan) return { problems };
  const done = moveThing(text, plan, document, thing, moves);
  if ('problem' in done) return done;
  const ways = moves.map(({ direction, by }) => `${by.written} ${inWords[direction]}`);
  return {
    text: done.text,
    did: `${writtenPath(done.path)} moved ${ways.join(' and ')}`,
    notes: [
      ...(done.along.length > 0 ? [`with it: ${done.along.join(', ')}`] : []),
      ...done.namesakes.map((path) => `of the same name, and left where it is: ${path}`),
    ],
  };
}

const inWords: Readonly<Record<Direction, string>> = {
  rearwards: 'rearwards',
  forwards: 'forwards',
  left: 'to the left',
  right: 'to the right',
  up: 'up',
  down: 'down',
};

const opposite: Readonly<Record<Direction, Direction>> = {
  rearwards: 'forwards',
  forwards: 'rearwards',
  left: 'right',
  right: 'left',
  up: 'down',
  down: 'up',
};

function movesOf(options: MoveOptions): { readonly moves: readonly Move[] } | { readonly wrong: string } {
  const moves: Move[] = [];
  for (const direction of directions) {
    const written = options[direction];
    if (written === undefined) continue;
    if (options[opposite[direction]] !== undefined)
      return {
        wrong: `--${direction} and --${opposite[direction]} are both given\n  expected: one of them\n`,
      };
    const by = distanceOf(written);
    if ('wrong' in by)
      return {
        wrong: `--${direction}: ${visible(by.wrong)}\n  expected: a distance, such as \`40 cm\`; --${opposite[direction]} goes the other way\n`,
      };
    moves.push({ direction, by });
  }
  return moves.length > 0
    ? { moves }
    : {
        wrong: `no direction is given\n  expected: one of ${directions.map((each) => `--${each}`).join(', ')} with a distance, such as \`--rearwards 40cm\`\n`,
      };
}

function distanceOf(written: string): Distance | { readonly wrong: string } {
  const read = readMeasured(
    written,
    withoutCalculator(() => false),
  );
  if (!read.ok) {
    const { message } = read.refusal;
    return { wrong: message.startsWith('`') ? message : `${quote(written)} ${message}` };
  }
  const length = ofKind(read.value, written.trim(), ['length']);
  if (!length.ok) return { wrong: length.refusal.message };
  const { value, halfWidth } = length.value;
  if (halfWidth > 0) return { wrong: `${quote(written)} has a tolerance` };
  return value > 0
    ? { written: written.trim(), lengthM: value }
    : { wrong: `${quote(written)} is not more than zero` };
}
