import type { Habits } from '../../build/habits.ts';
import type { Outlet, Water, WaterPipe } from '../../build/water.ts';
import { drainSlopeLeaning, fallNeededM } from '../../calc/water/drain.ts';
import { strictestDrainSlope } from '../../catalogue/water/drains.ts';
import { waterLimits } from '../../catalogue/water/limits.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { length, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { type DrainPiece, piecesOf, slopeOf, worstOf } from '../drains.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { boreOf } from '../pipe-bore.ts';
import { namesOf } from '../routed.ts';
import { byName, outlets } from '../watered.ts';
import { upToMillimetre } from '../whole-millimetres.ts';

const text: RuleText = {
  id: 'water.drain-fall',
  topic: 'water',
  title: 'waste runs downhill',
  why: 'Waste water has no pump: where its pipe is level or climbs, it stands, stinks, freezes, and comes up in the shower.',
  formula:
    's = tan(arctan(h/l) − θ) ≥ s_min for every piece of the way; h its fall, l its length in plan, m; θ the slope that the van is parked on, the wrong way; s_min by diameter, as a share',
  sources: [
    {
      title: 'The strictest of the published falls for the diameter, from rules for buildings',
      provenance: 'own choice',
    },
    {
      title: 'A way that falls on level ground and not on the parking slope warns; one that climbs fails',
      provenance: 'own choice',
    },
  ],
  cautions: [waterCaution],
  fix: 'Lay the waste pipe so that it falls all the way, steeper than the ground you park on.',
  place: ['water', 'pipes'],
};

/** A drain whose diameter the plan does not say, m: the narrowest has the strictest fall. */
const narrowestM = 0.02;

export default defineRule({
  ...text,
  needs: { outlets },
  work: ({ build: { water, habits } }, { subject, measured }) => {
    const pipe = water?.pipes.find(({ name, role }) => name === subject && role === 'drain');
    const pieces = pipe && piecesOf(pipe);
    return pieces && measured && stepsOf(pipe, pieces, parkedOn(habits));
  },
  check: ({ build, facts }) => {
    const { water, habits } = build;
    if (!water) return { findings: [] };
    const draining = facts.outlets.filter(({ drains }) => drains);
    const drains = byName(water.pipes.filter(({ role }) => role === 'drain'));
    const from = new Set(drains.map((pipe) => pipe.from));
    const pipeless = draining.filter(({ name }) => !from.has(name));
    const judged = drains.map((pipe) => ({ pipe, pieces: piecesOf(pipe) }));
    const unknown = judged.filter(({ pieces }) => !pieces).map(({ pipe }) => pipe);
    const findings = judged.flatMap(({ pipe, pieces }) =>
      pieces ? [fallOf(pipe, pieces, parkedOn(habits))] : [],
    );
    return {
      findings: [
        ...foldPasses(findings, 'waste pipe'),
        ...draining.filter(({ name }) => from.has(name)).flatMap((outlet) => endless(outlet, water)),
        ...(draining.length === 0 ? [nothingDrains(facts.outlets)] : []),
        ...notKnown(pipeless, unknown),
      ],
    };
  },
});

interface Parked {
  readonly parkedShare: number;
  readonly isStated: boolean;
}

/** How the ground falls, the wrong way; one degree where the plan does not say. */
const parkedOn = ({ parkingSlope }: Habits): Parked => ({
  parkedShare: parkingSlope ?? Math.tan((waterLimits['parking-lean'].value * Math.PI) / 180),
  isStated: parkingSlope !== undefined,
});

const degreesOf = (slope: number): number => (Math.atan(slope) * 180) / Math.PI;

/** What is left of a piece's fall; more than one to one, up or down, is not told apart. */
function leftOf({ fallM, runM }: DrainPiece, parkedShare: number): number {
  if (runM === 0) return Math.sign(fallM);
  const parkedDeg = degreesOf(parkedShare);
  // What climbs so steeply that the ground would tip it over still climbs.
  if (degreesOf(fallM / runM) - parkedDeg <= -90) return -1;
  return Math.max(-1, Math.min(1, drainSlopeLeaning(fallM, runM, parkedDeg)));
}

/** The piece that falls least for its length, and what the ground leaves of it. */
function stepsOf(
  pipe: WaterPipe,
  pieces: readonly DrainPiece[],
  { parkedShare, isStated }: Parked,
): readonly Step[] {
  const { name, path } = pipe;
  const worst = worstOf(pieces);
  const { fallM, runM, where } = worst;
  const left = leftOf(worst, parkedShare);
  const paths = ['run', 'rise', 'length'].map((key) => [...path, key]);
  const piece = pieces.length > 1 ? `, the worst of ${pieces.length} pieces: ${where}` : '';
  if (runM === 0)
    return [
      {
        what: `The fall of ${name}${piece}`,
        sum: say`${length(fallM)} straight ${fallM < 0 ? 'up' : 'down'}, counted as one to one`,
        result: share(left),
        paths,
      },
    ];
  const slope = slopeOf(worst);
  const full = Math.abs(left) === 1 ? say`; more than one to one is not counted` : [];
  return [
    {
      what: `The fall of ${name} on level ground: h / l${piece}`,
      sum: say`${length(fallM)} / ${length(runM)}`,
      result: share(slope),
      paths,
    },
    {
      what: 'What is left of it where the ground falls the wrong way by p: (h/l − p) / (1 + h/l · p)',
      sum: say`(${share(slope)} − ${share(parkedShare)}) / (1 + ${share(slope)} · ${share(parkedShare)})${isStated ? [] : say`, with one degree as the ground, since the plan states none`}${full}`,
      result: share(left),
      paths: [['living', 'parking_slope']],
    },
  ];
}

function fallOf(pipe: WaterPipe, pieces: readonly DrainPiece[], parked: Parked): Finding {
  const { parkedShare, isStated } = parked;
  const { name, path } = pipe;
  const bore = boreOf(pipe);
  const { leastSlope, citations } = strictestDrainSlope(pipe.sizeM ?? bore?.widestM ?? narrowestM);
  const worst = worstOf(pieces);
  const levelSlope = slopeOf(worst);
  const climbs = exceeds(0, worst.fallM);
  const piece = pieces.length > 1 ? say` ${worst.where}` : say``;
  const reason = climbs
    ? say`${name} climbs ${length(-worst.fallM)} over ${length(worst.runM)}${piece}: water stands in it.`
    : worst.runM === 0
      ? say`${name} falls straight down.`
      : say`${name} falls ${length(worst.fallM)} over ${length(worst.runM)}${piece}, ${share(levelSlope)} on level ground; parked on ${share(parkedShare)} the wrong way${isStated ? '' : ' (one degree, since the plan states no parking slope)'}, what is left counts.`;
  const neededM = upToMillimetre(fallNeededM(worst.runM, leastSlope, degreesOf(parkedShare)));
  return judge({
    rule: text,
    subject: name,
    path,
    kind: 'share',
    measured: { value: leftOf(worst, parkedShare), standard: 0 },
    limit: leastSlope,
    sense: 'at least',
    broken: climbs ? 'fail' : 'warn',
    reason,
    remedy: () =>
      say`Let it fall ${length(neededM)} there, ${length(Math.max(0, neededM - worst.fallM))} more than now, or shorten the way${isStated ? say`` : say`; \`living.parking_slope\` says how level you park`}.`,
    sources: [...citations, ...(isStated ? [] : waterLimits['parking-lean'].citations)],
  });
}

/** A drain that ends at a tee which leads nowhere, or in a tank for something else. */
function endless({ name, path }: Outlet, { pipes, tanks }: Water): Finding[] {
  const ends = new Set([
    'outside',
    ...tanks.filter(({ contents }) => contents === 'waste').map((tank) => tank.name),
  ]);
  const passed = new Set<string>();
  for (let at: string | undefined = name; at !== undefined && !passed.has(at); ) {
    passed.add(at);
    if (ends.has(at)) return [];
    at = pipes.find((pipe) => pipe.role === 'drain' && pipe.from === at)?.to;
  }
  return [
    observed(text, {
      verdict: 'fail',
      subject: `${name}, where its waste goes`,
      path,
      reason: say`The waste of ${name} does not come to a waste tank: its pipes end before one.`,
      remedy: say`Add the pipe that leads on \`to\` a waste tank, or to \`outside\`.`,
    }),
  ];
}

const nothingDrains = (all: readonly Outlet[]): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: 'outlets',
    path: text.place,
    reason: say`By the plan no water goes down a waste pipe from ${namesOf(all.map(({ name }) => name))}.`,
  });

function notKnown(outletsWithout: readonly Outlet[], pipesWithout: readonly WaterPipe[]): Finding[] {
  const names = [...outletsWithout, ...pipesWithout].map(({ name }) => name);
  const [first] = [...outletsWithout, ...pipesWithout];
  if (!first) return [];
  return [
    observed(text, {
      verdict: 'not checked',
      subject: namesOf(names),
      path: first.path,
      reason: say`How the waste of ${namesOf(names)} runs is not in the plan.`,
      missing: [
        ...outletsWithout.map(({ name }) => `water.pipes.NAME: {from: ${name}, to: waste tank}`),
        ...pipesWithout.map(({ path }) => [...path, 'run'].join('.')),
      ],
    }),
  ];
}
