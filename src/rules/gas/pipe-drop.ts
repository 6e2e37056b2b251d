import type { Build } from '../../build/build.ts';
import type { GasPipe } from '../../build/gas.ts';
import { fullRateOf, gasBurntIn, gasUseOf } from '../../build/gas-use.ts';
import { boreOf, gasDropPa } from '../../calc/gas/pipe-flow.ts';
import { type GasSection, gasTreeOf } from '../../calc/gas/pipe-tree.ts';
import {
  corrugatedCapacityM3S,
  corrugatedCitations,
  corrugatedDropPa,
  equivalentLengthM,
  metricTubes,
  pipeFlowCitations,
} from '../../catalogue/gas/pipes.ts';
import { gasProperties } from '../../catalogue/gas/properties.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length, massFlow, pressure } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { appliances, gasLimit, keyOf } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';

const text: RuleText = {
  id: 'gas.pipe-drop',
  topic: 'gas',
  title: 'gas pressure at each appliance',
  why: 'Where too much pressure is lost on the way, flames burn low and unsteadily, blow out, and give off carbon monoxide.',
  formula:
    'Δp = Σ Δp of the sections on the way ≤ Δp_max, with all appliances on; each the greatest of the low-pressure equation Q = (19.17·D·(ΔH/(C_r·L))^0.206)^(1/0.381), Pole’s formula and laminar flow; L with what bends and tees add, Q by section',
  sources: pipeFlowCitations,
  cautions: [
    gasCaution,
    combustionCaution,
    'For tube that is smooth and as wide as the plan says: flux, kinks and dirt make it narrower. A gas engineer measures the pressure at the appliances with all of them on.',
  ],
  fix: 'Lay wider tube on the way that loses most, or shorten it.',
  lifeSafety: true,
  place: ['gas', 'pipes'],
};

const pipes: Need<readonly GasPipe[]> = ({ gas }) =>
  gas && gas.pipes.length > 0 ? given(gas.pipes) : missing('gas.pipes');

const tubeBoreM = ({ boreM, sizeM, wallM }: GasPipe): number | undefined =>
  boreM ?? (sizeM !== undefined && wallM !== undefined ? boreOf(sizeM, wallM) : undefined);

/** Corrugated tube is sold by a nominal size, and has a table of its own. */
const corrugatedOf = ({ material, sizeM = 0 }: GasPipe): 'DN12' | 'DN15' | undefined => {
  if (material !== 'corrugated stainless steel') return undefined;
  return sizeM >= 0.015 ? 'DN15' : sizeM >= 0.012 ? 'DN12' : undefined;
};

function keysOf(pipe: GasPipe): readonly string[] {
  const { path, lengthM, material, sizeM, wallM, boreM } = pipe;
  const bore =
    material === 'corrugated stainless steel'
      ? corrugatedOf(pipe)
        ? []
        : ['size']
      : boreM !== undefined
        ? []
        : [...(sizeM === undefined ? ['size'] : []), ...(wallM === undefined ? ['wall'] : [])];
  return [...(lengthM === undefined ? ['length'] : []), ...bore].map((key) => keyOf(path, key));
}

export default defineRule({
  ...text,
  needs: { appliances, pipes },
  check: ({ build, facts }) => {
    const burns = gasBurntIn(build);
    const { rateMissing } = gasUseOf(build);
    const lacking = [...rateMissing, ...facts.pipes.flatMap(keysOf)];
    const sections = facts.pipes.map((pipe) => sectionOf(pipe));
    const { vapourM3PerKg } = gasProperties[burns];
    const demands = new Map(
      facts.appliances.map((appliance) => [
        appliance.name,
        (fullRateOf(appliance, burns) ?? 0) * vapourM3PerKg,
      ]),
    );
    const tree = gasTreeOf('regulator', sections, demands, gasProperties[burns]);
    const unfed = tree.unfed.map((name) => `gas.pipes.NAME: {from: regulator, to: ${name}}`);
    if (lacking.length > 0 || unfed.length > 0)
      return { findings: [notKnown([...new Set([...lacking, ...unfed])])] };
    const flows = new Map(tree.sections.map(({ name, flowM3S }) => [name, flowM3S]));
    const judgements = facts.appliances.map((appliance) => {
      const way = wayTo(appliance.name, facts.pipes);
      return judged({ name: appliance.name, path: appliance.path, way, flows, build });
    });
    return { findings: foldPasses(worstAlone(judgements), 'appliance') };
  },
});

/** One thin pipe starves all that hangs on it: the worst of them speaks for the others. */
function worstAlone(findings: readonly Finding[]): Finding[] {
  const passes = findings.filter(({ verdict }) => verdict === 'pass');
  const [worst, ...others] = findings
    .filter(({ verdict }) => verdict !== 'pass')
    .sort((a, b) => (b.utilisation ?? 0) - (a.utilisation ?? 0));
  if (!worst) return passes;
  const also =
    others.length === 0
      ? say``
      : say` Too much is lost to ${namesOf(others.map(({ subject }) => subject))} as well.`;
  return [{ ...worst, reason: say`${worst.reason}${also}` }, ...passes];
}

function sectionOf(pipe: GasPipe): GasSection {
  const boreM = tubeBoreM(pipe) ?? pipe.sizeM ?? 0.01;
  return {
    name: pipe.name,
    from: pipe.from,
    to: pipe.to,
    boreM,
    lengthM: equivalentLengthM({ lengthM: pipe.lengthM ?? 0.001, boreM, bends: pipe.bends, tees: pipe.tees }),
  };
}

/** The pipes from the regulator to an appliance, in this order. */
function wayTo(appliance: string, all: readonly GasPipe[]): readonly GasPipe[] {
  const way: GasPipe[] = [];
  for (let at = appliance; at !== 'regulator'; ) {
    const pipe = all.find(({ to }) => to === at);
    if (!pipe || way.includes(pipe)) return way;
    way.unshift(pipe);
    at = pipe.from;
  }
  return way;
}

/** The table of corrugated tube ends here, m. */
const longestPrintedM = 30;

/** What is lost in a pipe at its flow; of another tube, as if it were laid in that. */
function dropIn(pipe: GasPipe, flowM3S: number, build: Build, boreM?: number): number {
  const corrugated = boreM === undefined ? corrugatedOf(pipe) : undefined;
  const section = sectionOf(boreM === undefined ? pipe : { ...pipe, boreM });
  if (corrugated) {
    const printedM = Math.min(section.lengthM, longestPrintedM);
    const capacity = corrugatedCapacityM3S(corrugated, printedM) ?? 0;
    // Flow goes with the root of the drop, and beyond the table the drop with the length.
    return corrugatedDropPa * (flowM3S / capacity) ** 2 * (section.lengthM / printedM);
  }
  return gasDropPa(section, flowM3S, gasProperties[gasBurntIn(build)]).dropPa;
}

interface Way {
  readonly name: string;
  readonly path: Finding['path'];
  readonly way: readonly GasPipe[];
  readonly flows: ReadonlyMap<string, number>;
  readonly build: Build;
}

function judged({ name, path, way, flows, build }: Way): Finding {
  const limit = gasLimit('pipe-drop', build);
  const flowIn = (pipe: GasPipe): number => flows.get(pipe.name) ?? 0;
  const drops = way.map((pipe) => ({ pipe, dropPa: dropIn(pipe, flowIn(pipe), build) }));
  const totalPa = drops.reduce((sum, { dropPa }) => sum + dropPa, 0);
  const worst = drops.reduce(
    (most, each) => (each.dropPa > most.dropPa ? each : most),
    drops[0] ?? { pipe: undefined, dropPa: 0 },
  );
  const { vapourM3PerKg } = gasProperties[gasBurntIn(build)];
  return judge({
    rule: text,
    subject: name,
    path,
    kind: 'pressure',
    measured: { value: totalPa, standard: 0 },
    limit: limit.value,
    sense: 'at most',
    broken: limit.broken,
    reason: say`With all appliances on, ${pressure(totalPa)} are lost between the regulator and ${name}${
      worst.pipe && way.length > 1
        ? say`, ${pressure(worst.dropPa)} of it in ${worst.pipe.name} at ${massFlow(flowIn(worst.pipe) / vapourM3PerKg)}`
        : say``
    }.`,
    remedy: () => remedyFor(way, flowIn, limit.value, build),
    sources: [...limit.sources, ...(way.some(corrugatedOf) ? corrugatedCitations : [])],
    cautions: limit.cautions,
  });
}

/** The narrowest tube that, in place of every narrower one on the way, keeps the limit. */
function remedyFor(
  way: readonly GasPipe[],
  flowIn: (pipe: GasPipe) => number,
  limitPa: number,
  build: Build,
): Phrase {
  for (const { outsideM, wallM } of [...metricTubes].sort(
    (a, b) => a.outsideM - 2 * a.wallM - (b.outsideM - 2 * b.wallM),
  )) {
    const boreM = boreOf(outsideM, wallM);
    const narrower = way.filter((pipe) => corrugatedOf(pipe) !== undefined || (tubeBoreM(pipe) ?? 0) < boreM);
    const totalPa = way.reduce(
      (sum, pipe) => sum + dropIn(pipe, flowIn(pipe), build, narrower.includes(pipe) ? boreM : undefined),
      0,
    );
    if (narrower.length > 0 && totalPa <= limitPa)
      return say`Lay ${namesOf(narrower.map(({ name }) => name))} in tube of ${length(outsideM)} with a wall of ${length(wallM)}: then ${pressure(totalPa)} are lost.`;
  }
  return say`No tube up to 22 mm keeps ${pressure(limitPa)}: shorten the way, or bring the regulator nearer.`;
}

const notKnown = (keys: readonly string[]): Finding =>
  observed(text, {
    verdict: 'not checked',
    subject: 'gas pipes',
    path: text.place,
    reason: say`Of pipes or appliances the plan does not say all that the pressure depends on.`,
    remedy: say`Add ${namesOf(
      keys.map((key) => `\`${key}\``),
      8,
    )}.`,
    missing: keys,
  });
