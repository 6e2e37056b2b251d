import type { Build } from '../../build/build.ts';
import type { Gas, GasStore } from '../../build/gas.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { count, type Measure, mass } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { gasCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { answered } from '../gas-answers.ts';
import { asked, gas, gasLimit, isInCylinders, keyOf, stores } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { counted, namesOf } from '../routed.ts';
import { contentsStep } from '../working/gas-store.ts';

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
  limits: ['cylinder-fixings', 'locker-cylinders', 'locker-cylinder-mass'],
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
        ...answered(text, facts.gas.upright === undefined ? [] : [uprightOf(facts.gas, all)], build),
        ...foldPasses([...heldOf(all, build), tooMany(all, build), ...tooHeavy(all, build)], 'check'),
        ...outsideLocker(facts.gas, all, build),
        ...notSaid(facts.gas, all),
      ],
    };
  },
  work: ({ build, facts }, { subject }) => {
    if (subject === ofNumber) return numberSteps(facts.stores, build);
    const store = facts.stores.find(
      ({ name }) => subject === ofFixings(name) || subject === ofContents(name),
    );
    if (!store) return undefined;
    return subject === ofContents(store.name) ? contentsSteps(store, build) : fixingsSteps(store, build);
  },
});

const ofNumber = 'number of cylinders';
const ofFixings = (name: string): string => `${name}: fixings`;
const ofContents = (name: string): string => `${name}: contents`;

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
            subject: ofFixings(name),
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
    subject: ofNumber,
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
      subject: ofContents(name),
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

/** All that the plan does not say of the cylinders, in one finding: no pass by silence. */
function notSaid({ path, upright, locker }: Gas, all: readonly GasStore[]): Finding[] {
  const loose = all.filter(({ fixed }) => !fixed);
  const thing = locker?.thing;
  const placeless =
    thing === undefined
      ? []
      : all.filter(({ hosts, whereabouts }) => !hosts.includes(thing) && whereabouts === undefined);
  const namesIn = (some: readonly GasStore[]): string => namesOf(some.map(({ name }) => name));
  const gaps = [
    ...(upright === undefined
      ? [
          {
            about: all,
            what: `whether ${namesIn(all)} ${isOrAre(all)} upright`,
            keys: [keyOf(path, 'upright')],
          },
        ]
      : []),
    ...(loose.length > 0
      ? [
          {
            about: loose,
            what: `what holds ${namesIn(loose)}`,
            keys: loose.map((each) => keyOf(each.path, 'fixings')),
          },
        ]
      : []),
    ...(placeless.length > 0
      ? [
          {
            about: placeless,
            what: `where ${namesIn(placeless)} ${isOrAre(placeless)}`,
            keys: placeless.map((each) => keyOf(each.path, 'in')),
          },
        ]
      : []),
    ...(locker && thing === undefined
      ? [{ about: [locker], what: 'which thing the locker is', keys: [keyOf(locker.path, 'thing')] }]
      : []),
  ];
  const [first] = gaps;
  if (!first) return [];
  const keys = gaps.flatMap((gap) => gap.keys);
  const about = new Set(
    gaps.flatMap((gap) => gap.about.map((one) => ('name' in one ? one.name : 'the locker'))),
  );
  return [
    observed(text, {
      verdict: 'not checked',
      subject: namesOf([...about]),
      path: first.about[0]?.path ?? text.place,
      reason: say`The plan does not say ${namesOf(gaps.map(({ what }) => what))}.`,
      remedy: say`Add ${namesOf(
        keys.map((key) => `\`${key}\``),
        8,
      )}.`,
      missing: keys,
    }),
  ];
}

const isOrAre = (some: readonly GasStore[]): string => (some.length === 1 ? 'stands' : 'stand');

const askedStep = (sense: string, of: string, result: Measure): Step => ({
  what: `Asked for ${sense}: ${of}`,
  result,
});

const fixingsSteps = ({ name }: GasStore, build: Build): readonly Step[] => {
  const limit = gasLimit('cylinder-fixings', build);
  const fixings = build.layout?.fixings.find(({ of }) => of === name);
  return [
    askedStep('at least', limit.of, count(limit.value)),
    {
      what: `What holds ${name}, as the plan says`,
      result: count(fixings?.count ?? 0),
      ...(fixings && { paths: [fixings.path] }),
    },
  ];
};

const numberSteps = (all: readonly GasStore[], build: Build): readonly Step[] => {
  const limit = gasLimit('locker-cylinders', build);
  return [
    askedStep('at most', limit.of, count(limit.value)),
    {
      what: 'Cylinders in the plan',
      sum: say`${namesOf(
        all.map(({ name }) => name),
        8,
      )}`,
      result: count(all.length),
      paths: all.map(({ path }) => path),
    },
  ];
};

const contentsSteps = (store: GasStore, build: Build): readonly Step[] => {
  const limit = gasLimit('locker-cylinder-mass', build);
  return [askedStep('at most', limit.of, mass(limit.value)), contentsStep(store)];
};
