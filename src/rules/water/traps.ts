import type { Outlet } from '../../build/water.ts';
import { waterLimits } from '../../catalogue/water/limits.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { keyAt, silentAbout } from '../silent-about.ts';
import { outlets } from '../watered.ts';

const least = waterLimits['trap-seal-least'];
const greatest = waterLimits['trap-seal-greatest'];

const text: RuleText = {
  id: 'water.traps',
  topic: 'water',
  title: 'water in the traps',
  why: 'The water that stands in a trap keeps the smell of the waste tank out; too little of it is shaken or sucked away.',
  formula: 'h_least ≤ h ≤ h_greatest; h depth of the water that stands in the trap, m',
  sources: [],
  cautions: [waterCaution, ...[least.caution, greatest.caution].filter((text) => text !== undefined)],
  fix: 'Take a trap in which the water stands deep enough, or one that closes without water.',
  limits: ['trap-seal-least', 'trap-seal-greatest'],
  place: ['water', 'outlets'],
};

export default defineRule({
  ...text,
  needs: { outlets },
  work: ({ facts }, { subject, measured }) => {
    const outlet = facts.outlets.find(({ name }) => name === subject);
    if (!outlet || !measured) return undefined;
    return [
      {
        what: 'The depth h of the water in the trap, as the plan gives it',
        sum: say`held against ${length(least.value)} at the least and ${length(greatest.value)} at the most`,
        result: length(outlet.trapM ?? 0),
        paths: [[...outlet.path, 'trap']],
      },
    ];
  },
  check: ({ facts }) => {
    const draining = facts.outlets.filter(({ drains }) => drains);
    const trapped = draining.flatMap((outlet) =>
      outlet.trapM === undefined ? [] : [judged(outlet, outlet.trapM)],
    );
    return {
      findings: [
        ...foldPasses(trapped, 'trap'),
        ...silentAbout(
          text,
          draining.filter(({ trapM }) => trapM === undefined),
          'how deep the water stands in its trap',
          keyAt('trap'),
        ),
        ...(draining.length === 0 ? [noDrains] : []),
      ],
    };
  },
});

const noDrains: Finding = observed(text, {
  verdict: 'pass',
  subject: 'outlets',
  path: text.place,
  reason: say`By the plan no outlet has a waste pipe that would need a trap.`,
});

function judged({ name, path }: Outlet, trapM: number): Finding {
  const isDeep = exceeds(trapM, greatest.value);
  const limit = isDeep ? greatest : least;
  return judge({
    rule: text,
    subject: name,
    path: [...path, 'trap'],
    kind: 'length',
    measured: { value: trapM, standard: 0 },
    limit: limit.value,
    sense: limit.sense,
    broken: 'warn',
    reason: say`In the trap of ${name} the water stands ${length(trapM)} deep.`,
    remedy: () =>
      isDeep
        ? say`Take a trap of at most ${length(greatest.value)}: a deeper one empties slowly and clogs.`
        : say`Take a trap of at least ${length(least.value)}, or one without water that closes by itself.`,
    sources: limit.citations,
  });
}
