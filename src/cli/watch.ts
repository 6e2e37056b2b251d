import { existsSync, statSync } from 'node:fs';
import { type Compared, compare } from '../engine/compare/compare.ts';
import { readSource } from '../plan/source.ts';
import { folded } from '../report/folded.ts';
import { renderProblems } from '../report/problems.ts';
import { visible } from '../report/visible.ts';
import { lastGoodText, renderWatched, watchHeader } from '../report/watched.ts';
import { checkPlan } from './check-plan.ts';
import { comparedOf } from './comparing/compared.ts';
import { defectText } from './defects.ts';
import type { Surroundings } from './surroundings.ts';
import { type Content, readerOf } from './watching/reading.ts';
import { savesOf } from './watching/saves.ts';
import type { Screen } from './watching/screen.ts';

/** A good result and when it was made. */
interface Good {
  readonly at: Date;
  readonly compared: Compared;
}

/**
 * Runs `storystick watch` until it is told to end, and returns its exit code. Nothing that a file may do ends it: what
 * cannot be understood is shown, and the last good result is kept to compare the next one with.
 */
export async function watch(file: string, around: Surroundings, openScreen: () => Screen): Promise<number> {
  if (!isFile(file)) {
    const source = readSource(file);
    const problems = 'problem' in source ? [source.problem] : [];
    around.complain(renderProblems(file, '', problems, noPosition));
    return 2;
  }
  const screen = openScreen();
  const saves = savesOf(file);
  const reader = readerOf(file, saves);
  const ended = screen.ended.then(() => undefined);
  let lastGood: Good | undefined;
  let isLater = false;
  for (;;) {
    const content = await Promise.race([reader.next(), ended]);
    if (content === undefined) break;
    const at = screen.now();
    const told = await tellOf(file, content, { at, lastGood, around, width: screen.width() });
    // A signal that came during the work is heard only now.
    await new Promise((resolve) => setImmediate(resolve));
    around.print(`${screen.fresh === '' && isLater ? '\n' : screen.fresh}${told.text}`);
    isLater = true;
    lastGood = told.good ?? lastGood;
  }
  await saves.close();
  around.print(screen.farewell);
  return 0;
}

interface Setting {
  readonly at: Date;
  readonly lastGood: Good | undefined;
  readonly around: Surroundings;
  readonly width: number;
}

interface Told {
  readonly text: string;
  readonly good?: Good;
}

/** What to print of a content, and its report, if there is one. */
async function tellOf(file: string, content: Content, setting: Setting): Promise<Told> {
  const { at, lastGood, around, width } = setting;
  const looks = { width, colour: around.colour };
  const header = watchHeader(file, at, looks);
  const withoutReport = (text: string): Told => ({
    text: [
      header,
      folded(text, width),
      ...(lastGood ? [lastGoodText(lastGood.compared.report, lastGood.at, looks)] : []),
      '',
    ].join('\n'),
  });
  if (!existsSync(file)) {
    return withoutReport(`${visible(file)} is not there at the moment; the watch waits for it.\n`);
  }
  if ('problem' in content) {
    return withoutReport(renderProblems(file, '', [content.problem], noPosition));
  }
  try {
    const checked = await checkPlan(file, content.text, around.loadCalculator, around.today?.());
    if (!checked.ok) {
      return withoutReport(renderProblems(file, content.text, checked.problems, checked.document.positionOf));
    }
    const { report, defects } = checked;
    const compared = comparedOf(file, checked);
    const since = lastGood && { at: lastGood.at, comparison: compare(lastGood.compared, compared) };
    const text = [header, renderWatched(report, since, looks), ...defects.map(defectText)].join('\n');
    return { text, good: { at, compared } };
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return withoutReport(
      `storystick has a defect and stopped: ${message}\nPlease report it with the plan that caused it. The watch goes on.\n`,
    );
  }
}

const noPosition = () => ({ line: 1, column: 1 });

/** A name that nothing bears is more often a slip than a plan to come. */
function isFile(file: string): boolean {
  try {
    return statSync(file).isFile();
  } catch {
    return false;
  }
}
