import type { WaterTank } from '../../build/water.ts';
import type { Finding } from '../../engine/finding.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { silentAbout } from '../silent-about.ts';
import { isFresh, tanks } from '../watered.ts';

const text: RuleText = {
  id: 'water.filling',
  topic: 'water',
  title: 'filling and overflow outside',
  why: 'Some day the hose runs on: what a full tank cannot take must run out under the van, not into its insulation.',
  formula: 'fresh tanks: filled_from outside, overflows_to outside',
  sources: [
    {
      title: 'A fresh tank is filled and overflows outside the living space; no source',
      provenance: 'common practice',
    },
  ],
  cautions: [waterCaution],
  fix: 'Lead filling and overflow to the outside of the van.',
  place: ['tanks'],
};

export default defineRule({
  ...text,
  needs: { tanks },
  check: ({ facts }) => {
    const fresh = facts.tanks.filter(isFresh);
    const silent = fresh.filter(({ filledFrom, overflowsTo }) => !filledFrom || !overflowsTo);
    return {
      findings: [
        ...foldPasses(fresh.flatMap(found), 'tank'),
        ...silentAbout(text, silent, 'where it is filled and where it overflows', (tank) =>
          ['filled_from', 'overflows_to']
            .filter((key) => {
              const given = fresh.find(({ name }) => name === tank.name);
              return key === 'filled_from' ? !given?.filledFrom : !given?.overflowsTo;
            })
            .map((key) => [...tank.path, key].join('.')),
        ),
        ...(fresh.length === 0 ? [noFresh] : []),
      ],
    };
  },
});

const noFresh: Finding = observed(text, {
  verdict: 'pass',
  subject: 'fresh tanks',
  path: text.place,
  reason: say`The plan has no fresh tank to fill.`,
});

function found({ name, path, filledFrom, overflowsTo }: WaterTank): Finding[] {
  const warn = (key: string, reason: string, remedy: string): Finding =>
    observed(text, {
      verdict: 'warn',
      subject: `${name}, ${key === 'filled_from' ? 'filling' : 'overflow'}`,
      path: [...path, key],
      reason: say`${reason}`,
      remedy: say`${remedy}`,
    });
  const warned = [
    ...(filledFrom === 'inside'
      ? [
          warn(
            'filled_from',
            `${name} is filled from inside: what is spilled runs into the van.`,
            'Take the filling hose to a cap in the outer wall, above the top of the tank.',
          ),
        ]
      : []),
    ...(overflowsTo === 'inside'
      ? [
          warn(
            'overflows_to',
            `${name} overflows inside: whoever forgets the hose floods the van.`,
            'Take an overflow at least as wide as the filling hose from the top of the tank down through the floor.',
          ),
        ]
      : []),
  ];
  if (warned.length > 0 || !filledFrom || !overflowsTo) return warned;
  return [
    observed(text, {
      verdict: 'pass',
      subject: name,
      path,
      reason: say`${name} is filled from outside and overflows there.`,
    }),
  ];
}
