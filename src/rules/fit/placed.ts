import type { Unplaced } from '../../build/layout.ts';
import { count } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { fitCaution } from '../cautions.ts';
import { fitFinding, shapesMethod, things } from '../fit-finding.ts';
import { layout, some } from '../needs.ts';

const text: RuleText = {
  id: 'fit.placed',
  topic: 'fit',
  title: 'a size and a place for everything',
  why: 'What has no size or no place takes no room in any check of fit, so it can stand in the way unnoticed.',
  formula:
    'known room = three sizes, and a place lengthways and sideways; what stands on the floor needs no height above it',
  sources: shapesMethod,
  cautions: [fitCaution],
  fix: 'Give each thing a size and a place.',
  place: ['fixtures'],
};

const all = some('fixtures.NAME.size', ({ solids, unplaced }) => [...solids, ...unplaced]);

/** More names than this make a sentence that nobody reads. */
const mostNamed = 8;

export default defineRule({
  ...text,
  needs: { layout, all },
  check: ({ build, facts: { layout } }) => {
    const { solids, unplaced, unplacedParts } = layout;
    const loose = unplaced.filter(isLoose);
    const lacking = [...unplaced.filter((each) => !isLoose(each)), ...unplacedParts];
    const left =
      loose.length === 0
        ? ''
        : say` ${things(loose.length)} lying loose in or on another, without size or place, ${loose.length === 1 ? 'is' : 'are'} left out.`;
    const [first] = lacking;
    if (!first)
      return {
        findings: [
          fitFinding(text, {
            subject: 'all things',
            path: text.place,
            verdict: 'pass',
            reason: say`${things(solids.length)} ${solids.length === 1 ? 'has' : 'have'} a size and a place.${left}`,
          }),
        ],
      };
    const pathOf = (name: string) => build.bodies.find(({ label }) => label === name)?.path.slice(0, 2);
    // A host without a place is named by its own keys; a host that takes no room is nowhere else in the list.
    const isListed = (key: string) => lacking.some(({ name }) => key === `${name}.at`);
    const keysOf = ({ path, missing }: Unplaced): readonly string[] =>
      missing
        .filter((key) => !isListed(key))
        .map((key) => {
          const host = key.endsWith('.at') ? pathOf(key.slice(0, -'.at'.length)) : undefined;
          return host ? `${host.join('.')}.at` : `${path.join('.')}.${key}`;
        });
    const missing = [...new Set(lacking.flatMap(keysOf))];
    const named = lacking
      .slice(0, mostNamed)
      .map(({ name, missing: keys }) => `${name} (${keys.join(', ')})`);
    const more: Phrase =
      lacking.length > mostNamed ? say` and ${count(lacking.length - mostNamed)} more` : [];
    const [firstKey = ''] = missing;
    return {
      findings: [
        fitFinding(text, {
          subject: 'things without a place',
          path: first.path,
          verdict: 'not checked',
          reason: say`The room of ${things(lacking.length)} is not known, and nothing is held against ${lacking.length === 1 ? 'it' : 'them'}: ${named.join(', ')}${more}.${left}`,
          remedy: say`Add ${count(missing.length)} ${missing.length === 1 ? 'key' : 'keys'}, beginning with \`${firstKey}\`; \`solid: false\` for what takes no room.`,
          missing,
        }),
      ],
    };
  },
});

/** Cutlery in a cupboard, bedding on a bed: it has no shape of its own, and fills what room there is. */
const isLoose = ({ inside, on, missing }: Unplaced): boolean =>
  (inside ?? on) !== undefined &&
  ['size.length', 'size.width', 'size.height', 'at.from_front', 'at.from_left'].every((key) =>
    missing.includes(key),
  );
