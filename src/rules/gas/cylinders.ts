import type { Build } from '../../build/build.ts';
import type { Gas, GasStore } from '../../build/gas.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { count, mass } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { gasCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { answered } from '../gas-answers.ts';
import { asked, gas, gasLimit, isInCylinders, stores } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { counted, namesOf } from '../routed.ts';
import { keyAt, silentAbout } from '../silent-about.ts';

const text: RuleText = {
  id: 'gas.cylinders',
  topic: 'gas',
  title: 'cylinders upright, held, not too many',
  why: 'A cylinder that lies down lets liquid into the regulator, one that comes loose tears its hose off, and every kilogram more feeds a fire longer.',
  formula:
    'upright; at least 2 fixings each; cylinders in the locker ≤ n_max; gas in each ≤ m_max, kg; each stands in the locker',
  sources: [],
  cautions: [gasCaution],
  fix: 'Stand cylinders upright in the locker, each held low and high, and take no more of them than are allowed.',
  lifeSafety: true,
  place: ['tanks'],
};

export default defineRule({
  ...text,
  needs: { gas, stores },
  check: ({ build, facts }) => {
    if (!isInCylinders(facts.gas))
      return {
        findings: [
          observed(text, {
            verdict: 'pass',
            subject: 'fixed tank',
            path: facts.stores[0]?.path ?? text.place,
            reason: say`By the plan the gas is in a fixed tank. How it is held is checked with all heavy things.`,
          }),
        ],
      };
    const all = facts.stores;
    return {
      findings: [
        ...answered(text, [uprightOf(facts.gas, all)], build),
        ...foldPasses([...heldOf(all, build), tooMany(all, build), ...tooHeavy(all, build)], 'check'),
        ...silentAbout(
          text,
          all.filter(({ fixed }) => !fixed),
          'what holds it',
          keyAt('fixings'),
        ),
        ...outsideLocker(facts.gas, all, build),
        ...ofUnknownPlace(facts.gas, all),
      ],
    };
  },
});

const uprightOf = ({ path, upright }: Gas, all: readonly GasStore[]) => ({
  subject: namesOf(all.map(({ name }) => name)),
  path,
  key: 'upright',
  isKept: upright,
  requirement: 'cylinder-upright' as const,
  kept: say`${counted(all.length, 'cylinder stands', 'cylinders stand')} upright`,
  broken: say`By the plan cylinders lie down.`,
  remedy: say`Stand them upright, the valve uppermost: only then gas and not liquid comes out.`,
});

function heldOf(all: readonly GasStore[], build: Build): Finding[] {
  const limit = gasLimit('cylinder-fixings', build);
  return all.flatMap(({ name }) => {
    const fixings = build.layout?.fixings.find(({ of }) => of === name);
    return fixings
      ? [
          judge({
            rule: text,
            subject: `${name}: fixings`,
            path: fixings.path,
            kind: 'count',
            measured: { value: fixings.count, standard: 0 },
            limit: limit.value,
            sense: 'at least',
            broken: limit.broken,
            reason: say`${name} is held by ${counted(fixings.count, 'fixing')}.`,
            remedy: (shortfall) =>
              say`Add ${count(Math.ceil(shortfall - 1e-9))} more: one low and one high, that open without tools.`,
            sources: limit.sources,
            cautions: limit.cautions,
          }),
        ]
      : [];
  });
}

function tooMany(all: readonly GasStore[], build: Build): Finding {
  const limit = gasLimit('locker-cylinders', build);
  return judge({
    rule: text,
    subject: 'number of cylinders',
    path: all[0]?.path ?? text.place,
    kind: 'count',
    measured: { value: all.length, standard: 0 },
    limit: limit.value,
    sense: 'at most',
    broken: limit.broken,
    reason: say`The plan has ${counted(all.length, 'cylinder')}: ${namesOf(all.map(({ name }) => name))}.`,
    remedy: (excess) => say`Leave ${count(excess)} behind.`,
    sources: limit.sources,
    cautions: limit.cautions,
  });
}

function tooHeavy(all: readonly GasStore[], build: Build): Finding[] {
  const limit = gasLimit('locker-cylinder-mass', build);
  return all.map(({ name, path, holdsKg }) =>
    judge({
      rule: text,
      subject: `${name}: contents`,
      path: [...path, 'holds'],
      kind: 'mass',
      measured: { value: holdsKg, standard: 0 },
      limit: limit.value,
      sense: 'at most',
      broken: limit.broken,
      reason: say`${name} holds ${mass(holdsKg)} of gas.`,
      remedy: () => say`Take cylinders of ${mass(limit.value)} or less.`,
      sources: limit.sources,
      cautions: limit.cautions,
    }),
  );
}

/** A cylinder that is in the van but not in the locker leaks into the room. */
const outsideLocker = ({ locker }: Gas, all: readonly GasStore[], build: Build): Finding[] => {
  const { thing } = locker ?? {};
  if (thing === undefined) return [];
  const { words, broken, sources, cautions } = asked('locker-sealed', build);
  return all
    .filter(
      ({ hosts, whereabouts }) =>
        !hosts.includes(thing) && (whereabouts === 'inside' || whereabouts === 'in the cab'),
    )
    .map(({ name, path }) =>
      observed(text, {
        verdict: broken,
        subject: `${name}: place`,
        path,
        reason: say`${name} stands in the van and not in ${thing}. What is asked for: ${words}.`,
        remedy: say`Put it into the locker: \`in: ${thing}\`.`,
        sources,
        cautions,
      }),
    );
};

/** Where a cylinder stands, or which thing the locker is, nobody can tell: no pass by silence. */
function ofUnknownPlace({ locker }: Gas, all: readonly GasStore[]): Finding[] {
  if (!locker) return [];
  if (locker.thing === undefined)
    return silentAbout(
      text,
      [{ name: 'the locker', path: locker.path }],
      'which thing it is',
      keyAt('thing'),
    );
  const { thing } = locker;
  return silentAbout(
    text,
    all.filter(({ hosts, whereabouts }) => !hosts.includes(thing) && whereabouts === undefined),
    'where it stands',
    keyAt('in'),
  );
}
