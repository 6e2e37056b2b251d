import type { Layout, Solid } from '../../build/layout.ts';
import { goalsOf } from '../../build/walking.ts';
import type { Citation } from '../../catalogue/citation.ts';
import { escapeWays } from '../../catalogue/fit-limits.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type EffectiveLimit, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { escapeCaution, fitCaution } from '../cautions.ts';
import {
  apartM,
  besideBedM,
  coveredShare,
  type Exit,
  type Exits,
  exitsIn,
  independent,
  isSideBySide,
  pastCookerM,
} from '../exits.ts';
import { fitFinding, listed } from '../fit-finding.ts';
import { missingKeys, openingKeys, walkingMethod } from '../ways.ts';
import { closedInWords, waysOutSteps } from '../working/exits.ts';

const chosen: Citation = {
  title: `Beside a bed: within ${1000 * besideBedM} mm; covered: more than ${100 * coveredShare} %; one way out, not two: less than ${apartM} m apart in one wall, or both within ${1000 * pastCookerM} mm of a cooker`,
  provenance: 'own choice',
};

const text: RuleText = {
  id: 'movement.ways-out',
  topic: 'movement',
  title: 'ways out from the beds',
  why: 'A fire or a jammed door closes one way out: those who sleep need another, on another side, that they can reach from the bed.',
  formula: 'n = number of ways out that no two of which one fire closes; n ≥ 2',
  sources: [...escapeWays.citations, chosen, ...walkingMethod],
  cautions: [escapeCaution, fitCaution, ...(escapeWays.caution ? [escapeWays.caution] : [])],
  fix: 'Add a way out on another side of the bed than the first, and keep the way to it free.',
  limits: ['escape-path-width'],
  lifeSafety: true,
  place: ['van', 'openings'],
};

const beds: Need<readonly Solid[]> = ({ layout }) =>
  layout
    ? missingKeys(
        goalsOf(layout).filter(({ use }) => use === 'bed'),
        'fixtures.NAME.is',
      )
    : missing('van.load_bay');

const openings: Need<Layout> = ({ layout }) => {
  if (!layout) return missing('van.load_bay');
  return layout.openings.length > 0 ? { ok: true, value: layout } : missing(...openingKeys(layout, 'kind'));
};

export default defineRule({
  ...text,
  override: { limit: 'escape-path-width', kinds: ['length'] },
  needs: { beds, layout: openings },
  check: ({ facts, limit }) => {
    const path = limit('escape-path-width');
    return {
      findings: groupedBeds(facts.layout, facts.beds, path.value).map((group) =>
        findingFor(facts.layout, group, path),
      ),
    };
  },
  work: ({ facts, limit }, { subject }) => {
    const leastWayM = limit('escape-path-width').value;
    const group = groupedBeds(facts.layout, facts.beds, leastWayM).find(
      (each) => subjectOf(each) === subject,
    );
    return group && waysOutSteps(group.beds[0], group.exits, group.ways, leastWayM, facts.layout);
  },
});

const subjectOf = ({ beds: [bed, ...others] }: Group): string =>
  `ways out from ${bed.name}${others.length > 0 ? ` and ${others.length} more` : ''}`;

/** Beds from which the same ways lead out. */
interface Group {
  readonly beds: readonly [Solid, ...Solid[]];
  readonly exits: Exits;
  readonly ways: readonly Exit[];
}

function groupedBeds(layout: Layout, all: readonly Solid[], leastWayM: number): Group[] {
  const groups = new Map<string, Group>();
  const exitsFrom = exitsIn(layout, leastWayM);
  for (const bed of all) {
    const exits = exitsFrom(bed);
    const ways = independent(exits.open);
    const key = JSON.stringify([ways.length, ...exits.open.map(({ opening }) => opening.name)]);
    const before = groups.get(key);
    groups.set(key, before ? { ...before, beds: [...before.beds, bed] } : { beds: [bed], exits, ways });
  }
  return [...groups.values()];
}

function findingFor(layout: Layout, group: Group, path: EffectiveLimit): Finding {
  const { exits, ways } = group;
  const names = listed(group.beds.map(({ name }) => [name]));
  const subject = subjectOf(group);
  const remedy = say`${remedyFor(exits, ways, path.value)}${unplacedWords(layout)}`;
  const closed = exits.closed.map((each) => closedInWords(each));
  const why = closed.length > 0 ? say` ${sentence(closed)}` : '';
  const reason = reasonFor(names, exits.open, ways, why);
  const place = ['van', 'openings'];
  if (ways.length === 0 && layout.unplacedOpenings.length > 0) {
    const keys = layout.unplacedOpenings.flatMap((opening) =>
      opening.missing.map((key) => [...opening.path, key].join('.')),
    );
    return fitFinding(text, { subject, path: place, verdict: 'not checked', reason, remedy, missing: keys });
  }
  return judge({
    rule: text,
    subject,
    path: place,
    kind: 'count',
    measured: { value: ways.length, standard: 0 },
    limit: escapeWays.count,
    sense: 'at least',
    // That nobody gets out at all breaks no mere guide.
    broken: ways.length === 0 ? 'fail' : 'warn',
    reason,
    remedy: () => remedy,
    sources: path.citations,
    cautions: path.cautions,
  });
}

function reasonFor(
  names: Phrase,
  open: readonly Exit[],
  ways: readonly Exit[],
  why: Phrase | string,
): Phrase {
  if (ways.length === 0) return say`The plan shows no way out from ${names}.${why}`;
  const [first] = ways;
  if (ways.length > 1 || !first) {
    const howMany = ways.length === 2 ? 'two' : String(ways.length);
    return say`The plan shows ${howMany} ways out from ${names}: ${listed(ways.map(exitInWords))}.`;
  }
  const second = open.find((other) => other !== first);
  if (!second)
    return say`The plan shows only one way out from ${names}: ${exitInWords(first)}${first.pastCooker ? say`, within ${length(pastCookerM)} of a cooker` : ''}.${why}`;
  const cause = isSideBySide(first.opening, second.opening)
    ? say`are less than ${length(apartM)} apart`
    : say`both lead within ${length(pastCookerM)} of a cooker`;
  return say`One fire can close every way out from ${names}: ${first.opening.name} and ${second.opening.name} ${cause}.${why}`;
}

const exitInWords = ({ opening, wayM }: Exit): Phrase =>
  wayM === undefined
    ? say`${opening.name} beside the bed`
    : say`${opening.name} by a way ${length(wayM)} wide`;

const sentence = (parts: readonly Phrase[]): Phrase => {
  const [first, ...rest] = listed(parts);
  return typeof first === 'string' ? [first.charAt(0).toUpperCase() + first.slice(1), ...rest, '.'] : [];
};

function remedyFor({ closed }: Exits, ways: readonly Exit[], leastWayM: number): Phrase {
  const covered = closed.find(({ coveredBy }) => coveredBy !== undefined);
  if (covered) return say`Take ${covered.coveredBy ?? ''} away from in front of ${covered.opening.name}.`;
  const narrow = closed.find(({ wayM }) => wayM !== undefined && wayM > 0);
  if (narrow)
    return say`Clear the way to ${narrow.opening.name} to ${length(leastWayM)}, or mark a window or hatch within ${length(besideBedM)} of the bed that opens from inside with \`escape: true\`.`;
  const apart = ways.length > 0 ? say`, ${length(apartM)} or more from ${ways[0]?.opening.name ?? ''}` : '';
  return say`Give the bed a window, hatch or door within ${length(besideBedM)} that opens from inside${apart}, and mark it \`escape: true\`.`;
}

const unplacedWords = ({ unplacedOpenings }: Layout): Phrase => {
  if (unplacedOpenings.length === 0) return [];
  const is = unplacedOpenings.length > 1 ? 'are' : 'is';
  return say` What or where ${listed(unplacedOpenings.map(({ name }) => [name]))} ${is} the plan does not say.`;
};
