import type { Build } from '../../build/build.ts';
import type { Gas, GasPipe } from '../../build/gas.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
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
});

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
      subject: `${name}: wall`,
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
      subject: `${name}: length`,
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
