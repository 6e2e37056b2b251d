import type { Build } from '../../build/build.ts';
import type { DropOut, Gas } from '../../build/gas.ts';
import type { Solid } from '../../build/layout.ts';
import type { Finding, PlanPath, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { freeArea, length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { gasCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { appliances, asked, gasLimit } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { keyAt, silentAbout } from '../silent-about.ts';

const text: RuleText = {
  id: 'gas.drop-outs',
  topic: 'gas',
  title: 'gas can fall out of the van',
  why: 'Gas sinks and lies on the floor of a cupboard like water, until a spark finds it. A hole in the floor lets it out.',
  formula: 'every space with gas fittings has a drop-out; A ≥ 13 cm² of free area each',
  sources: [
    { title: 'That a space without a drop-out fails: a matter of life', provenance: 'own choice' },
    {
      title: 'A thing that gas fittings stand in or on, and what that stands in, is one space',
      provenance: 'own choice',
    },
  ],
  cautions: [gasCaution],
  fix: 'Open a hole through the floor at the lowest point of each space that holds gas fittings, with a mesh over it.',
  lifeSafety: true,
  limits: ['drop-out-area'],
  place: ['gas', 'drop_outs'],
};

/** A space that gas would gather in, with what of the installation is in it. */
interface Space {
  readonly name: string;
  readonly path: PlanPath;
  readonly fittings: readonly string[];
  /** Its lowest point above the floor of the van. */
  readonly bottomM: number;
  /** Names by which a drop-out may say that it is in it; none: the living space itself. */
  readonly parts: ReadonlySet<string>;
}

/** For the thickness of a bottom board: own choice, m. */
const highestM = 0.02;

const theRoom = 'the living space';

const withGas: Need<Gas> = ({ gas }) => {
  if (!gas) return missing('gas');
  return gas.saysDropOuts || gas.appliances.length > 0 ? given(gas) : missing('gas.drop_outs');
};

export default defineRule({
  ...text,
  needs: { gas: withGas, appliances },
  check: ({ build, facts: { gas } }) => {
    const spaces = spacesOf(gas, build.layout?.solids ?? []);
    if (!gas.saysDropOuts) return { findings: [notSaid(spaces, build)] };
    const bare = spaces.filter((space) => !gas.dropOuts.some((dropOut) => isIn(space, dropOut)));
    return {
      findings: [
        ...bare.map((space) => without(space, build)),
        ...spaces.flatMap((space) =>
          gas.dropOuts
            .filter((dropOut) => isIn(space, dropOut))
            .flatMap((dropOut) => tooHigh(dropOut, space)),
        ),
        ...foldPasses(
          gas.dropOuts.flatMap((dropOut) => sized(dropOut, build)),
          'drop-out',
        ),
        ...silentAbout(
          text,
          gas.dropOuts.filter(({ areaM2 }) => areaM2 === undefined),
          'the free area',
          keyAt('area'),
        ),
      ],
    };
  },
  work: ({ build, facts: { gas } }, { subject, measured }) => {
    for (const dropOut of gas.dropOuts) {
      const { name, place } = dropOut;
      if (subject === name && measured?.kind === 'free area') return areaSteps(dropOut, build);
      const space = spacesOf(gas, build.layout?.solids ?? []).find((each) => isIn(each, dropOut));
      if (subject === heightOf(name) && place && space) return heightSteps(dropOut, place.zM, space);
    }
    return undefined;
  },
});

const isIn = (space: Space, { in: inside }: DropOut): boolean =>
  inside === undefined ? space.parts.size === 0 : space.parts.has(inside);

const heightOf = (name: string): string => `${name}: height`;

/** Of drop-outs the plan says nothing at all, not even that there are none. */
function notSaid(spaces: readonly Space[], build: Build): Finding {
  const { words, sources, cautions } = asked('drop-out', build);
  const where = spaces.map(({ name, fittings }) => `${name} (${namesOf(fittings)})`);
  return observed(text, {
    verdict: 'not checked',
    subject: where.length === 0 ? 'drop-outs' : namesOf(spaces.map(({ name }) => name)),
    path: text.place,
    reason: say`The plan says nothing of drop-outs, and from a space without one gas cannot leave. ${
      where.length === 0
        ? 'By the plan all gas fittings are outside the van.'
        : say`Gas fittings are in ${namesOf(where)}.`
    } What is asked for: ${words}.`,
    remedy: say`Add \`gas.drop_outs\`, with one for each space, or \`gas.drop_outs: {}\` if there are none.`,
    missing: ['gas.drop_outs'],
    sources,
    cautions,
  });
}

/** The spaces that hold appliances and valves: the outermost thing that they stand in or on, or the room. */
function spacesOf({ appliances: all, manifold }: Gas, solids: readonly Solid[]): readonly Space[] {
  const fittings = [
    ...all
      .filter(
        ({ whereabouts }) =>
          whereabouts === undefined || whereabouts === 'inside' || whereabouts === 'in the cab',
      )
      .map(({ name, path, hosts, thing }) => ({ name, path, hosts, thing })),
    ...(manifold
      ? [{ name: 'the manifold', path: manifold.path, hosts: manifold.hosts, thing: manifold.thing }]
      : []),
  ];
  const spaces = new Map<string, { path: PlanPath; fittings: string[]; parts: Set<string> }>();
  for (const { name, path, hosts, thing } of fittings) {
    const outermost = hosts.at(-1) ?? theRoom;
    const space = spaces.get(outermost) ?? { path, fittings: [], parts: new Set<string>() };
    space.fittings.push(name);
    if (hosts.length > 0)
      for (const part of [...hosts, ...(thing === undefined ? [] : [thing])]) space.parts.add(part);
    spaces.set(outermost, space);
  }
  return [...spaces].map(([name, space]) => ({
    name,
    ...space,
    bottomM: solids.find((solid) => solid.name === name)?.box.bottomM ?? 0,
  }));
}

function without({ name, path, fittings }: Space, build: Build): Finding {
  const { words, sources, cautions } = asked('drop-out', build);
  const least = gasLimit('drop-out-area', build);
  return observed(text, {
    verdict: 'fail',
    subject: name,
    path,
    reason: say`${namesOf(fittings)} ${fittings.length === 1 ? 'is' : 'are'} in ${name}, and the plan shows no drop-out there. What is asked for: ${words}.`,
    remedy: say`Open at least ${freeArea(least.value)} through the floor at the lowest point of ${name}, with a mesh against mice, and add it: \`{in: ${name === theRoom ? 'left out' : name}, area: ${String(Math.ceil(least.value * 1e4))} cm2}\`.`,
    sources: [...sources, ...least.sources],
    cautions: [...cautions, ...least.cautions],
  });
}

/** Gas that lies lower than its way out stays. */
function tooHigh({ name, path, place }: DropOut, space: Space): Finding[] {
  const aboveM = place ? place.zM - space.bottomM : 0;
  if (!exceeds(aboveM, highestM)) return [];
  return [
    observed(text, {
      verdict: 'fail',
      subject: heightOf(name),
      path: [...path, 'at'],
      measured: length(aboveM),
      reason: say`The drop-out ${name} begins ${length(aboveM)} above the bottom of ${space.name}: gas lies below it and does not fall out.`,
      remedy: say`Put it through the floor, at most ${length(highestM)} above the lowest point of ${space.name}.`,
    }),
  ];
}

const areaSteps = ({ path, areaM2 = 0 }: DropOut, build: Build): readonly Step[] => {
  const least = gasLimit('drop-out-area', build);
  return [
    { what: `Asked for at least: ${least.of}`, result: freeArea(least.value) },
    { what: 'Its free area, as the plan says', result: freeArea(areaM2), paths: [[...path, 'area']] },
  ];
};

const heightSteps = ({ name, path }: DropOut, atM: number, space: Space): readonly Step[] => [
  {
    what: `How far ${name} may lie above the lowest point: for the thickness of a bottom board, this tool's own choice`,
    result: length(highestM),
  },
  {
    what: `How far ${name} lies above the bottom of ${space.name}, both counted from the floor of the load bay`,
    sum: say`${length(atM)} − ${length(space.bottomM)}`,
    result: length(atM - space.bottomM),
    paths: [[...path, 'at']],
  },
];

function sized({ name, path, areaM2, in: inside }: DropOut, build: Build): Finding[] {
  if (areaM2 === undefined) return [];
  const least = gasLimit('drop-out-area', build);
  return [
    judge({
      rule: text,
      subject: name,
      path: [...path, 'area'],
      kind: 'free area',
      measured: { value: areaM2, standard: 0 },
      limit: least.value,
      sense: 'at least',
      broken: least.broken,
      reason: say`The drop-out ${name} in ${inside ?? theRoom} has a free area of ${freeArea(areaM2)}.`,
      remedy: () =>
        say`Make it ${freeArea(Math.ceil(least.value * 1e4) / 1e4)} or more, or as the maker of the appliance asks.`,
      sources: least.sources,
      cautions: least.cautions,
    }),
  ];
}
