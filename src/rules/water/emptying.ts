import type { Water } from '../../build/water.ts';
import type { Finding } from '../../engine/finding.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { byName } from '../watered.ts';

const text: RuleText = {
  id: 'water.emptying',
  topic: 'water',
  title: 'water can be let out',
  why: 'Before a frost without heat, and before weeks of standing, all water must come out: what stays bursts or rots.',
  formula: 'a drain valve on the pipes, and one on a storage heater',
  sources: [
    {
      title: 'A drain valve at the lowest point and one on the water heater; no source',
      provenance: 'common practice',
    },
  ],
  cautions: [waterCaution],
  fix: 'Fit drain valves at the lowest point of the cold and of the hot pipes, and at the water heater.',
  place: ['water', 'valves'],
};

const withValves: Need<Water> = ({ water }) => {
  if (!water) return missing('water');
  if (water.pipes.length === 0 && !water.heater) return missing('water.pipes');
  return water.valves.length > 0 ? given(water) : missing('water.valves.NAME: {kind: drain, pipe: NAME}');
};

export default defineRule({
  ...text,
  needs: { water: withValves },
  check: ({ facts: { water } }) => {
    const lettingOut = byName(water.valves.filter(({ kind }) => kind === 'drain' || kind === 'frost'));
    const { heater } = water;
    const heaterLeft =
      heater?.kind === 'storage' &&
      !lettingOut.some(({ thing }) => thing !== undefined && thing === heater.thing);
    const onPipes = lettingOut.filter(({ pipe }) => pipe !== undefined);
    const findings: Finding[] = [
      ...(water.pipes.length > 0 && onPipes.length === 0 ? [noneOnPipes] : []),
      ...(heater && heaterLeft
        ? [
            observed(text, {
              verdict: 'warn',
              subject: 'water heater',
              path: heater.path,
              reason: say`No drain valve empties the water heater, which holds its water when all taps are open.`,
              remedy: say`Add one to the plan, \`{kind: drain, thing: ${heater.thing ?? 'water heater'}}\` under \`water.valves\`; the one that the maker fits counts.`,
            }),
          ]
        : []),
    ];
    if (findings.length > 0) return { findings };
    return {
      findings: [
        observed(text, {
          verdict: 'pass',
          subject: 'valves',
          path: text.place,
          reason: say`${namesOf(lettingOut.map(({ name }) => name))} let the water out. Whether they sit at the lowest points shows on the van.`,
        }),
      ],
    };
  },
});

const noneOnPipes: Finding = observed(text, {
  verdict: 'warn',
  subject: 'pipes',
  path: text.place,
  reason: say`The plan has no drain valve on a pipe.`,
  remedy: say`Put one at the lowest point of the cold and of the hot pipes: \`{kind: drain, pipe: NAME}\` under \`water.valves\`.`,
});
