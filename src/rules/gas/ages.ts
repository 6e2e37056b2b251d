import type { Build } from '../../build/build.ts';
import type { PlanPath } from '../../engine/finding.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { gasCaution } from '../cautions.ts';
import { gas, gasLimit } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { keyAt, silentAbout } from '../silent-about.ts';

const text: RuleText = {
  id: 'gas.ages',
  topic: 'gas',
  title: 'age of hoses and regulator',
  why: 'Rubber cracks and regulators stick with the years, whether gas flows or not.',
  formula:
    'due = the date on it + 10 years; today is not known here, so a due date is broken only if another date in the plan is later',
  sources: [],
  cautions: [gasCaution],
  fix: 'Replace what is due, and write the date on the new part into the plan.',
  lifeSafety: true,
  limits: ['hose-age', 'regulator-age'],
  place: ['gas'],
};

interface Ageing {
  readonly name: string;
  readonly path: PlanPath;
  readonly dated?: string;
  readonly of: 'hose-age' | 'regulator-age';
}

/** The regulator and all hoses. */
const ageing: Need<readonly Ageing[]> = ({ gas: all }) => {
  const found = [
    ...(all?.regulator ? [{ ...all.regulator, name: 'regulator', of: 'regulator-age' as const }] : []),
    ...(all?.hoses ?? []).map((hose) => ({ ...hose, of: 'hose-age' as const })),
  ];
  return found.length > 0 ? given(found) : missing('gas.regulator', 'gas.hoses');
};

export default defineRule({
  ...text,
  needs: { gas, ageing },
  check: ({ build, facts: { ageing: all } }) => {
    const latest = latestDayOf(build);
    const dated = all.flatMap(({ name, path, dated: day, of }) =>
      day === undefined ? [] : [{ name, path, day, due: yearsAfter(day, gasLimit(of, build).value), of }],
    );
    const isOver = ({ due }: { readonly due: string }): boolean => latest !== undefined && due < latest;
    const over = dated.filter(isOver);
    const left = dated.filter((each) => !isOver(each)).toSorted((a, b) => (a.due < b.due ? -1 : 1));
    const [first] = left;
    return {
      findings: [
        ...over.map(({ name, path, day, due, of }) => {
          const limit = gasLimit(of, build);
          return observed(text, {
            verdict: limit.broken,
            subject: name,
            path: [...path, 'dated'],
            reason: say`${name} is dated ${day} and was due for replacement on ${due}; the plan itself has a later date, ${latest ?? ''}.`,
            remedy: say`Replace it before the gas is used again, and write the date on the new one: it serves ${String(limit.value)} years at most.`,
            sources: limit.sources,
            cautions: limit.cautions,
          });
        }),
        ...silentAbout(
          text,
          all.filter(({ dated: day }) => day === undefined),
          'the date on it',
          keyAt('dated'),
        ),
        ...(first
          ? [
              observed(text, {
                verdict: 'pass',
                subject: namesOf(left.map(({ name }) => name)),
                path: [...first.path, 'dated'],
                reason: say`Due for replacement: ${left.map(({ name, due, day }) => `${name} on ${due} (dated ${day})`).join(', ')}. Whether that day has passed, the plan does not show.`,
                sources: gasLimit(first.of, build).sources,
                cautions: gasLimit(first.of, build).cautions,
              }),
            ]
          : []),
      ],
    };
  },
});

/** A day of a year as ISO writes it; the 29th of February becomes the 28th. */
function yearsAfter(day: string, years: number): string {
  const year = Number(day.slice(0, 4)) + years;
  const rest = day.slice(4);
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return `${String(year).padStart(4, '0')}${rest === '-02-29' && !isLeap ? '-02-28' : rest}`;
}

/** The plan was written after this: it is the latest day on which something had already happened. */
function latestDayOf({ tickets, gas: all }: Build): string | undefined {
  const days = [
    ...tickets.map(({ date }) => date),
    ...(all?.regulator?.dated === undefined ? [] : [all.regulator.dated]),
    ...(all?.hoses ?? []).flatMap(({ dated }) => (dated === undefined ? [] : [dated])),
  ];
  return days.toSorted().at(-1);
}
