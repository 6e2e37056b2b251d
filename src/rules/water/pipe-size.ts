import type { WaterPipe } from '../../build/water.ts';
import { copperSizes, plasticSizesRemembered } from '../../catalogue/water/sources.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { boreKeys, boreOf } from '../pipe-bore.ts';
import { namesOf } from '../routed.ts';
import { isPressed } from '../water-network.ts';
import { byName } from '../watered.ts';

const text: RuleText = {
  id: 'water.pipe-size',
  topic: 'water',
  title: 'bores of pipes are known',
  why: 'A pipe is sold by its outside: 15 mm of plastic hold half of what 15 mm of copper hold, and lose more than four times the pressure.',
  formula:
    'D = outer diameter − 2·wall, m, by material and size; of a hose the size itself; where walls differ, the narrowest for what is lost and the widest for what stands in it',
  sources: [copperSizes, plasticSizesRemembered],
  cautions: [waterCaution],
  fix: 'Give the material and the size of each pipe, or its bore.',
  place: ['water', 'pipes'],
};

const pressedPipes: Need<readonly WaterPipe[]> = ({ water }) => {
  if (!water) return missing('water');
  const pipes = byName(water.pipes.filter(isPressed));
  return pipes.length > 0 ? given(pipes) : missing('water.pipes');
};

export default defineRule({
  ...text,
  needs: { pipes: pressedPipes },
  check: ({ facts: { pipes } }) => {
    const unknown = pipes.filter((pipe) => !boreOf(pipe));
    if (unknown.length > 0) return { findings: [notKnown(unknown)] };
    return {
      findings: [
        observed(text, {
          verdict: 'pass',
          subject: 'pipes',
          path: text.place,
          reason: say`How wide every pipe under pressure is inside follows from the plan. ${narrowest(pipes)}`,
        }),
      ],
    };
  },
});

function narrowest(pipes: readonly WaterPipe[]): Phrase {
  const bores = pipes.flatMap((pipe) => {
    const bore = boreOf(pipe);
    return bore ? [{ pipe, boreM: bore.narrowestM }] : [];
  });
  // They are in the order of their names: of equals the first.
  const least = bores.reduce<(typeof bores)[number] | undefined>(
    (found, each) => (found && found.boreM <= each.boreM ? found : each),
    undefined,
  );
  return least ? say`The narrowest is ${least.pipe.name}, with ${length(least.boreM)} inside.` : [];
}

const listed = (pipes: readonly WaterPipe[]): string => namesOf(pipes.map(({ name }) => name));

function notKnown(pipes: readonly WaterPipe[]) {
  const missing = pipes.flatMap(boreKeys);
  const offTable = pipes.filter(({ material, sizeM }) => material !== undefined && sizeM !== undefined);
  const more =
    offTable.length > 0
      ? say` ${listed(offTable)}: no such size is in the table of its material; measure the bore.`
      : '';
  return observed(text, {
    verdict: 'not checked',
    subject: listed(pipes),
    path: pipes.length === 1 ? (pipes[0]?.path ?? text.place) : text.place,
    reason: say`How wide ${pipes.length === 1 ? 'this pipe is' : 'these pipes are'} inside is not known, and so neither what flows nor what stands in ${pipes.length === 1 ? 'it' : 'them'}.${more}`,
    remedy: say`Add ${missing.map((key) => `\`${key}\``).join(', ')}.`,
    missing,
  });
}
