import { assemble } from '../build/assemble.ts';
import type { View } from '../build/picture/model.ts';
import { pictureOf } from '../build/picture/picture.ts';
import { routingFor } from '../build/routing.ts';
import { loadPlan } from '../plan/load.ts';
import { ofKind, readMeasured, withoutCalculator } from '../plan/quantity.ts';
import { quote } from '../plan/quote.ts';
import { readSource } from '../plan/source.ts';
import { renderPicture } from '../report/look/look.ts';
import { renderProblems } from '../report/problems.ts';
import { visible } from '../report/visible.ts';
import type { Surroundings } from './surroundings.ts';

export const viewNames = ['plan', 'left', 'right'] as const satisfies readonly View['name'][];

export interface LookOptions {
  /** All of them, if it is empty. */
  readonly views: readonly View['name'][];
  /** Above the floor. */
  readonly cutM?: number;
}

/** Runs `storystick look` and returns its exit code. */
export async function look(
  file: string,
  { views, cutM }: LookOptions,
  around: Surroundings,
): Promise<number> {
  const source = readSource(file);
  if ('problem' in source) {
    around.complain(renderProblems(file, '', [source.problem], () => ({ line: 1, column: 1 }), 'drawn'));
    return 2;
  }
  const { document, plan, problems } = await loadPlan(source.text, around.loadCalculator);
  if (!plan) {
    around.complain(renderProblems(file, source.text, problems, document.positionOf, 'drawn'));
    return 2;
  }
  const build = assemble(plan, await routingFor(plan));
  if (!build.layout) {
    around.print(
      `${visible(file)}: nothing can be drawn yet, since the plan does not give the load bay.\n  to add: \`load_bay: {behind_front_axle: 1130 mm, length: 3270 mm, width: 1760 mm, height: 1890 mm}\` under \`van\`\n`,
    );
    return 0;
  }
  const picture = pictureOf(build, build.layout, {
    views: views.length > 0 ? views : viewNames,
    ...(cutM !== undefined && { cutM }),
  });
  around.print(renderPicture(picture, { width: around.width, colour: around.colour }));
  return 0;
}

/** The views named on the command line, or the words for one that does not exist. */
export function parseViews(
  written: readonly string[],
): { readonly views: readonly View['name'][] } | { readonly unknown: string } {
  const chosen: View['name'][] = [];
  for (const word of written.flatMap((each) => each.split(',')).map((each) => each.trim())) {
    const view = viewNames.find((each) => each === word);
    if (!view) return { unknown: word };
    if (!chosen.includes(view)) chosen.push(view);
  }
  return { views: chosen };
}

/** The height of a cut as written on the command line, or what is wrong with it. */
export function parseCut(written: string): { readonly cutM: number } | { readonly wrong: string } {
  const expected = 'a height above the floor, such as `1.2 m`';
  const wrong = (message: string) => ({ wrong: `--at: ${visible(message)}\n  expected: ${expected}\n` });
  const read = readMeasured(
    written,
    withoutCalculator(() => false),
  );
  if (!read.ok) {
    const { message } = read.refusal;
    return wrong(message.startsWith('`') ? message : `${quote(written)} ${message}`);
  }
  const length = ofKind(read.value, written.trim(), ['length']);
  if (!length.ok) return wrong(length.refusal.message);
  return { cutM: length.value.value };
}
