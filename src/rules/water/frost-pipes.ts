import type { Water, WaterPipe } from '../../build/water.ts';
import { airFilm } from '../../catalogue/water/frost.ts';
import { pipeFreezing } from '../../catalogue/water/sources.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { duration, length, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { piecesOf } from '../drains.ts';
import { foldPasses } from '../fold-passes.ts';
import {
  type ColdPipe,
  conductivityOf,
  pipeCooling,
  usualFoam,
  usualFoamWMK,
  wrapAgainstFrost,
} from '../frost.ts';
import { observed } from '../observed.ts';
import { boreKeys, boreOf } from '../pipe-bore.ts';
import { namesOf } from '../routed.ts';
import { pipes, winterLow } from '../watered.ts';
import { frozenPipeSteps } from '../working/frost.ts';

const text: RuleText = {
  id: 'water.frost-pipes',
  topic: 'water',
  title: 'pipes out of the frost',
  why: 'Water grows by a tenth as it freezes and bursts the pipe; the first warm day floods the van.',
  formula:
    't = ρ·c·π·(D₁/2)²·R·ln((T_w − T_a)/(0 − T_a)) ≥ the cold spell; D₁ inner diameter, m; R = ln(D₃/D₂)/(2π·λ) + R_s/(π·D₃), m·K/W, D₂ and D₃ outer diameter without and with insulation; T_w water, T_a winter low, °C',
  sources: [
    pipeFreezing,
    ...airFilm.outside.citations,
    {
      title:
        'Water that stands in a pipe for the whole cold spell, without heat from its ends; a drain that falls all the way is empty',
      provenance: 'own choice',
    },
  ],
  cautions: [waterCaution],
  fix: 'Lead pipes through the heated space, heat them, or wrap them thickly enough for the cold spell.',
  place: ['water', 'pipes'],
};

/** Walls of pipes whose outer diameter the plan does not say: own choice. */
const usualWallM = 0.002;

export default defineRule({
  ...text,
  needs: { pipes, winterLowC: winterLow },
  work: ({ build, facts: { pipes, winterLowC } }, { subject, measured }) => {
    const pipe = pipes.find(({ name }) => name === subject);
    const cold = build.water && pipe && coldOf(pipe, build.water, winterLowC);
    if (!pipe || !cold || !measured) return undefined;
    return frozenPipeSteps(cold, { ...aboutOf(pipe), path: pipe.path });
  },
  check: ({ build, facts: { pipes, winterLowC } }) => {
    const { water } = build;
    if (!water) return { findings: [] };
    const carrying = pipes.filter(
      (pipe) => (pipe.role !== 'drain' || standsFull(pipe)) && pipe.role !== 'vent' && pipe.role !== 'fill',
    );
    const unknown = carrying.filter(({ exposedM }) => exposedM === undefined);
    const cold = carrying.filter(({ exposedM = 0 }) => exposedM > 0);
    const boreless = cold.filter((pipe) => !pipe.heated && !boreOf(pipe));
    const findings = cold.flatMap((pipe) =>
      findingOf(pipe, water, { coldSpellS: build.habits.coldSpellS, winterLowC }),
    );
    return {
      findings: [
        ...foldPasses(findings, 'pipe'),
        ...(cold.length === 0 && unknown.length === 0 ? [allWarm(carrying)] : []),
        ...notKnown(unknown, boreless),
      ],
    };
  },
});

/** A drain that is level or climbs somewhere keeps its water there. */
const standsFull = (pipe: WaterPipe): boolean =>
  (piecesOf(pipe) ?? []).some(({ fallM, runM }) => fallM < 0 || (fallM === 0 && runM > 0));

interface Winter {
  readonly coldSpellS: number;
  readonly winterLowC: number;
}

function findingOf(pipe: WaterPipe, water: Water, { coldSpellS, winterLowC }: Winter): Finding[] {
  const { name, path, exposedM = 0 } = pipe;
  const lies = whereIt(pipe);
  if (winterLowC >= 0)
    return [
      observed(text, {
        verdict: 'pass',
        subject: name,
        path,
        reason: say`${name} lies ${lies}, but the plan's winter low of ${temperatureC(winterLowC)} is no frost.`,
      }),
    ];
  if (pipe.heated)
    return [
      observed(text, {
        verdict: 'pass',
        subject: name,
        path: [...path, 'heated'],
        reason: say`${length(exposedM)} of ${name} lie ${lies}, and the plan heats it: it freezes when that heat fails.`,
      }),
    ];
  const coldPipe = coldOf(pipe, water, winterLowC);
  if (!coldPipe) return [];
  const wrapped = pipe.insulation;
  const { thicknessM, conductivityWMK } = aboutOf(pipe);
  const { seconds } = pipeCooling(coldPipe, thicknessM, conductivityWMK);
  const drains = water.valves.some(
    (valve) => (valve.kind === 'drain' || valve.kind === 'frost') && valve.pipe === name,
  );
  return [
    judge({
      rule: text,
      subject: name,
      path,
      kind: 'duration',
      measured: { value: seconds, standard: 0 },
      limit: coldSpellS,
      sense: 'at least',
      broken: drains ? 'warn' : 'fail',
      reason: say`${length(exposedM)} of ${name} lie ${lies}. At ${temperatureC(winterLowC)}, water of ${temperatureC(water.coldC)} that stands in it reaches freezing after ${duration(seconds)}${wrapped ? say` behind ${length(wrapped.thicknessM)} of ${wrapped.material.name}` : say`, without insulation`}${drains ? say`. It has a valve to empty it: that must be done before every cold night` : say``}.`,
      remedy: () => remedyFor(coldPipe, conductivityWMK, wrapped?.material.name ?? usualFoam, coldSpellS),
    }),
  ];
}

/** A pipe as the cold meets it; undefined where nobody knows how wide it is. */
function coldOf(pipe: WaterPipe, { coldC }: Water, winterLowC: number): ColdPipe | undefined {
  const bore = boreOf(pipe);
  return (
    bore && {
      innerDiameterM: bore.narrowestM,
      outerDiameterM: outerOf(pipe, bore.narrowestM),
      waterC: coldC,
      airC: winterLowC,
    }
  );
}

/** What is about a pipe; without insulation the foam that a remedy speaks of, nothing thick. */
const aboutOf = ({ insulation }: WaterPipe) => ({
  thicknessM: insulation?.thicknessM ?? 0,
  conductivityWMK: insulation ? conductivityOf(insulation) : usualFoamWMK,
});

const outerOf = ({ material, sizeM }: WaterPipe, innerM: number): number =>
  sizeM !== undefined && material !== 'hose' && sizeM > innerM ? sizeM : innerM + 2 * usualWallM;

const whereIt = ({ exposedIn }: WaterPipe): string =>
  exposedIn.length > 0 ? `in the cold (${namesOf(exposedIn)})` : 'below the floor';

function remedyFor(pipe: ColdPipe, conductivity: number, material: string, seconds: number): Phrase {
  const thicknessM = wrapAgainstFrost(pipe, conductivity, seconds);
  const inside = say`take it through the heated space, or heat it and write \`heated: true\``;
  return thicknessM === undefined
    ? say`No insulation up to 50 mm holds for ${duration(seconds)}: ${inside}.`
    : say`Wrap it in ${length(thicknessM)} of ${material}, or ${inside}.`;
}

const allWarm = (pipes: readonly WaterPipe[]): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: 'pipes',
    path: text.place,
    reason: say`By the plan ${pipes.length === 1 ? 'the one pipe' : `none of the ${String(pipes.length)} pipes`} that ${pipes.length === 1 ? 'holds' : 'hold'} water ${pipes.length === 1 ? 'does not lie' : 'lies'} in the cold.`,
  });

function notKnown(unknown: readonly WaterPipe[], boreless: readonly WaterPipe[]): Finding[] {
  const all = [...unknown, ...boreless];
  const [first] = all;
  if (!first) return [];
  return [
    observed(text, {
      verdict: 'not checked',
      subject: namesOf(all.map(({ name }) => name)),
      path: first.path,
      reason: say`Where ${namesOf(all.map(({ name }) => name))} ${all.length === 1 ? 'lies' : 'lie'}, or how wide ${all.length === 1 ? 'it is' : 'they are'}, is not in the plan.`,
      missing: [
        ...unknown.map(({ path }) => [...path, 'run'].join('.')),
        ...boreless.flatMap((pipe) => boreKeys(pipe)),
      ],
    }),
  ];
}
