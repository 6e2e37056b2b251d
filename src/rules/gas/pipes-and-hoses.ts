import type { Build } from '../../build/build.ts';
import type { Gas, GasPipe } from '../../build/gas.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { factor, length, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { gasCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { type Answer, answered } from '../gas-answers.ts';
import { gasLimit } from '../gas-facts.ts';
import { keyAt, silentAbout } from '../silent-about.ts';
import { upToMillimetre } from '../whole-millimetres.ts';

const text: RuleText = {
  id: 'gas.pipes-and-hoses',
  topic: 'gas',
  title: 'gas pipes, joints and hoses',
  why: 'Hose ages and chafes, and joints are what leaks: where nobody sees them, nobody smells it in time either.',
  formula:
    'pipes of metal; no joint out of sight; wall ≥ 10 % of the outside diameter; each hose no longer than its limit, m',
  sources: [],
  cautions: [gasCaution],
  fix: 'Lay metal pipes with every joint in reach, and keep hoses short.',
  lifeSafety: true,
  limits: ['pipe-wall-share', 'hose-length', 'hose-length-slide-out'],
  place: ['gas', 'pipes'],
};

const piped: Need<Gas> = ({ gas }) => (gas && gas.pipes.length > 0 ? given(gas) : missing('gas.pipes'));

export default defineRule({
  ...text,
  needs: { gas: piped },
  check: ({ build, facts: { gas } }) => ({
    findings: [
      ...answered(text, gas.pipes.flatMap(answersOf), build),
      ...foldPasses(
        gas.pipes.flatMap((pipe) => wallOf(pipe, build)),
        'wall',
      ),
      ...foldPasses(
        gas.hoses.flatMap((hose) => hoseOf(hose, build)),
        'hose',
      ),
      ...silentAbout(
        text,
        gas.pipes.filter(isOfUnknownWall),
        'its outside diameter and its wall',
        keyAt('size', 'wall'),
      ),
      ...silentAbout(
        text,
        gas.hoses.filter(({ lengthM }) => lengthM === undefined),
        'how long it is',
        keyAt('length'),
      ),
    ],
  }),
  work: ({ build, facts: { gas } }, { subject }) => {
    const pipe = gas.pipes.find(({ name }) => ofWall(name) === subject);
    if (pipe) return wallSteps(pipe, build);
    const hose = gas.hoses.find(({ name }) => ofLength(name) === subject);
    return hose && hoseSteps(hose, build);
  },
});

const ofWall = (name: string): string => `${name}: wall`;
const ofLength = (name: string): string => `${name}: length`;

const answersOf = ({ name, path, material, hiddenJoints }: GasPipe): readonly Answer[] => [
  {
    subject: name,
    path,
    key: 'material',
    isKept: material === undefined ? undefined : material !== 'hose',
    requirement: 'pipe-material',
    kept: say`${name} is of ${material ?? 'metal'}`,
    broken: say`${name} is a hose, and leads away from the regulator.`,
    remedy: say`Lay it in copper, steel or stainless steel; a hose only joins a cylinder to its regulator.`,
  },
  {
    subject: name,
    path,
    key: 'hidden_joints',
    isKept: hiddenJoints === undefined ? undefined : hiddenJoints === 0,
    requirement: 'hidden-joints',
    kept: say`${name} has no joint out of sight`,
    broken: say`${name} has ${hiddenJoints === 1 ? 'a joint' : `${String(hiddenJoints ?? 0)} joints`} where ${hiddenJoints === 1 ? 'it' : 'they'} cannot be seen or reached.`,
    remedy: say`Bend the pipe from one piece there, or move the ${hiddenJoints === 1 ? 'joint' : 'joints'} to where a hand and an eye reach.`,
  },
];

/** As typed, or from what is outside and inside. */
const wallThicknessM = ({ sizeM, wallM, boreM }: GasPipe): number | undefined =>
  wallM ?? (sizeM !== undefined && boreM !== undefined ? (sizeM - boreM) / 2 : undefined);

/** Smooth tube; hose and corrugated tube have no wall that is measured so. */
const isSmooth = ({ material }: GasPipe): boolean =>
  material === 'copper' || material === 'steel' || material === 'stainless steel';

const isOfUnknownWall = (pipe: GasPipe): boolean =>
  isSmooth(pipe) && (pipe.sizeM === undefined || wallThicknessM(pipe) === undefined);

function wallOf(pipe: GasPipe, build: Build): Finding[] {
  const { name, path, sizeM } = pipe;
  const wallM = wallThicknessM(pipe);
  if (sizeM === undefined || wallM === undefined) return [];
  const { value, broken, sources, cautions } = gasLimit('pipe-wall-share', build);
  const leastM = value * sizeM;
  return [
    judge({
      rule: text,
      subject: ofWall(name),
      path: [...path, 'wall'],
      kind: 'length',
      measured: { value: wallM, standard: 0 },
      limit: leastM,
      sense: 'at least',
      broken,
      reason: say`${name} has a wall of ${length(wallM)} at ${length(sizeM)} outside.`,
      remedy: () => say`Take tube of this size with a wall of ${length(upToMillimetre(leastM))}.`,
      sources,
      cautions,
    }),
  ];
}

function hoseOf({ name, path, lengthM }: Gas['hoses'][number], build: Build): Finding[] {
  if (lengthM === undefined) return [];
  const { value, broken, sources, cautions } = gasLimit('hose-length', build);
  return [
    judge({
      rule: text,
      subject: ofLength(name),
      path: [...path, 'length'],
      kind: 'length',
      measured: { value: lengthM, standard: 0 },
      limit: value,
      sense: 'at most',
      broken,
      reason: say`${name} is ${length(lengthM)} long.`,
      remedy: () =>
        say`Take a hose of at most ${length(value)} and bring cylinder and regulator together; one on a slide-out may have ${length(gasLimit('hose-length-slide-out', build).value)}.`,
      sources,
      cautions,
    }),
  ];
}

/** Tenths of a millimetre count here. */
const inMm = (lengthM: number): Phrase => say`${factor(lengthM * 1000)} mm`;

function wallSteps(pipe: GasPipe, build: Build): readonly Step[] | undefined {
  const { path, sizeM, wallM, boreM } = pipe;
  const thickM = wallThicknessM(pipe);
  if (sizeM === undefined || thickM === undefined) return undefined;
  const { value } = gasLimit('pipe-wall-share', build);
  return [
    {
      what: 'The wall that is asked for at least: a share of the outside diameter',
      sum: say`${share(value)} · ${inMm(sizeM)} = ${inMm(value * sizeM)}`,
      result: length(value * sizeM),
      paths: [[...path, 'size']],
    },
    wallM === undefined && boreM !== undefined
      ? {
          what: 'The wall that is left between outside and inside',
          sum: say`(${inMm(sizeM)} − ${inMm(boreM)}) / 2 = ${inMm(thickM)}`,
          result: length(thickM),
          paths: [
            [...path, 'size'],
            [...path, 'bore'],
          ],
        }
      : {
          what: 'Its wall, as the plan says',
          sum: inMm(thickM),
          result: length(thickM),
          paths: [[...path, 'wall']],
        },
  ];
}

const hoseSteps = ({ path, lengthM = 0 }: Gas['hoses'][number], build: Build): readonly Step[] => {
  const { value, of } = gasLimit('hose-length', build);
  return [
    { what: `Asked for at most: ${of}`, result: length(value) },
    { what: 'Its length, as the plan says', result: length(lengthM), paths: [[...path, 'length']] },
  ];
};
