import type { Build } from '../../build/build.ts';
import type { Appliance, GasPipe } from '../../build/gas.ts';
import { fullRateOf, gasBurntIn, gasUseOf } from '../../build/gas-use.ts';
import { boreOf } from '../../calc/gas/pipe-flow.ts';
import { type GasTree, gasTreeOf } from '../../calc/gas/pipe-tree.ts';
import { corrugatedCitations, metricTubes, pipeFlowCitations } from '../../catalogue/gas/pipes.ts';
import { gasProperties } from '../../catalogue/gas/properties.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length, massFlow, pressure, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { appliances, gasLimit, keyOf } from '../gas-facts.ts';
import { corrugatedOf, dropIn, sectionOf, tubeBoreM, wayTo } from '../gas-pipes.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { dropSteps } from '../working/gas-drop.ts';

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
  limits: ['pipe-drop'],
  place: ['gas', 'pipes'],
};

const pipes: Need<readonly GasPipe[]> = ({ gas }) =>
  gas && gas.pipes.length > 0 ? given(gas.pipes) : missing('gas.pipes');

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
    const { rateMissing } = gasUseOf(build);
    const lacking = [...rateMissing, ...facts.pipes.flatMap(keysOf)];
    const tree = treeOf(build, facts.appliances, facts.pipes);
    const unfed = tree.unfed.map((name) => `gas.pipes.NAME: {from: regulator, to: ${name}}`);
    if (lacking.length > 0 || unfed.length > 0)
      return { findings: [notKnown([...new Set([...lacking, ...unfed])])] };
    const flows = flowsIn(tree);
    const judgements = facts.appliances.map((appliance) => {
      const way = wayTo(appliance.name, facts.pipes);
      return judged({ name: appliance.name, path: appliance.path, way, flows, build });
    });
    return { findings: foldPasses(worstAlone(judgements), 'appliance') };
  },
  work: ({ build, facts }, { subject, measured }) => {
    if (measured === undefined) return undefined;
    const tree = treeOf(build, facts.appliances, facts.pipes);
    return dropSteps({
      build,
      appliances: facts.appliances,
      all: facts.pipes,
      way: wayTo(subject, facts.pipes),
      flows: flowsIn(tree),
      to: subject,
    });
  },
});

/** Everything on at once, in the volume that the vapour takes up. */
function treeOf(build: Build, appliances: readonly Appliance[], pipes: readonly GasPipe[]): GasTree {
  const burns = gasBurntIn(build);
  const { vapourM3PerKg } = gasProperties[burns];
  const demands = new Map(
    appliances.map((appliance) => [appliance.name, (fullRateOf(appliance, burns) ?? 0) * vapourM3PerKg]),
  );
  return gasTreeOf(
    'regulator',
    pipes.map((pipe) => sectionOf(pipe)),
    demands,
    gasProperties[burns],
  );
}

const flowsIn = ({ sections }: GasTree): ReadonlyMap<string, number> =>
  new Map(sections.map(({ name, flowM3S }) => [name, flowM3S]));

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
      worst.pipe && way.length > 1 && totalPa > 0
        ? say`, ${share(worst.dropPa / totalPa)} of it in ${worst.pipe.name} at ${massFlow(flowIn(worst.pipe) / vapourM3PerKg)}`
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
