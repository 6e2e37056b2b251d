import type { Vent } from '../../build/air.ts';
import type { Build } from '../../build/build.ts';
import type { Flame } from '../../build/flames.ts';
import { fixedOpeningsOf } from '../../build/night-air.ts';
import { parallelAreaM2 } from '../../calc/air/openings.ts';
import { dwellingOpenFlueM2, dwellingOpenFlueRow } from '../../catalogue/air/fixed-ventilation.ts';
import type { Finding, Part, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { freeArea, power } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { flames } from '../air-facts.ts';
import { airCaution, combustionCaution, gasCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { cm2PerM2, upToShown } from '../shown-digits.ts';
import { ventsStep } from '../working/vents.ts';

const text: RuleText = {
  id: 'air.combustion-air',
  topic: 'air',
  title: 'air for open flues',
  why: 'A flame that lacks air makes carbon monoxide, and its flue stops drawing.',
  formula:
    'ΣA ≥ 5 cm² · P; P net input of what has an open flue, kW, A fixed vents, without credit for leaks',
  sources: dwellingOpenFlueRow.citations,
  cautions: [combustionCaution, gasCaution, airCaution, dwellingOpenFlueRow.caution],
  fix: 'Open fixed vents of the area that the flame needs, and never cover them.',
  lifeSafety: true,
  place: ['gas', 'appliances'],
};

interface Flued {
  readonly flame: Flame;
  readonly netW: number;
}

const flued: Need<readonly Flued[]> = (build) => {
  const found = flames(build);
  if (!found.ok) return found;
  const open = found.value.filter(({ flue }) => flue === 'open-flued');
  const keys = [
    ...found.value.filter(({ flue }) => flue === undefined).map(({ path }) => `${path.join('.')}.flue`),
    ...open.flatMap(inputKeys),
    ...(open.length > 0 && build.air === undefined ? ['air.vents'] : []),
  ];
  if (keys.length > 0) return missing(...keys);
  return given(open.map((flame) => ({ flame, netW: flame.netInputW ?? 0 })));
};

function inputKeys({ path, netInputW }: Flame): readonly string[] {
  if (netInputW !== undefined) return [];
  return path[0] === 'heat' ? ['heat.heater.output', 'heat.heater.efficiency'] : [`${path.join('.')}.input`];
}

export default defineRule({
  ...text,
  needs: { flued },
  check: ({ build, facts }) => {
    const fixedM2 = parallelAreaM2(fixedVents(build).map(({ freeAreaM2 }) => freeAreaM2));
    return { findings: [findingFor(facts.flued, fixedM2)] };
  },
  work: ({ build, facts }) => (facts.flued.length === 0 ? undefined : steps(facts.flued, build)),
});

function fixedVents(build: Build): readonly Vent[] {
  const { low, high, withoutLevel } = fixedOpeningsOf(build);
  return [...low, ...high, ...withoutLevel];
}

const netOf = (all: readonly Flued[]): number => all.reduce((sum, { netW }) => sum + netW, 0);

function steps(all: readonly Flued[], build: Build): readonly Step[] {
  const netW = netOf(all);
  const rows = all.map(
    ({ flame, netW: eachW }): Part => ({
      name: flame.name,
      path: flame.path,
      origin: 'computed',
      values: [],
      adds: power(eachW),
    }),
  );
  return [
    {
      what: 'What takes its air from the room, at full flame, net: P',
      result: power(netW),
      parts: { columns: ['input'], rows },
      paths: all.map(({ flame }) => flame.path),
    },
    {
      what: 'Free area that it needs, with no credit for leaks: 5 cm² for each kW',
      sum: say`${freeArea(dwellingOpenFlueM2(1000).withoutLeaksM2)} for ${power(1000)} · ${power(netW)}`,
      result: freeArea(dwellingOpenFlueM2(netW).withoutLeaksM2),
    },
    ventsStep('Fixed vents that nobody can shut', fixedVents(build)),
  ];
}

function findingFor(all: readonly Flued[], fixedM2: number): Finding {
  const [first] = all;
  if (!first)
    return observed(text, {
      verdict: 'pass',
      subject: 'open flues',
      path: text.place,
      reason: say`The plan shows nothing with an open flue.`,
    });
  const netW = netOf(all);
  const { withoutLeaksM2 } = dwellingOpenFlueM2(netW);
  return judge({
    rule: text,
    subject: first.flame.name,
    path: first.flame.path,
    kind: 'free area',
    measured: { value: fixedM2, standard: 0 },
    limit: withoutLeaksM2,
    sense: 'at least',
    // The guide is for houses, but a flame that lacks air kills.
    broken: 'fail',
    reason: say`${namesOf(all.map(({ flame }) => flame.name))} with ${power(netW)} net ${all.length === 1 ? 'takes its' : 'take their'} air from the room and ${all.length === 1 ? 'needs' : 'need'} ${freeArea(withoutLeaksM2)} of vents that nobody can shut; the plan has ${freeArea(fixedM2)}.`,
    remedy: (shortM2) =>
      say`Fit ${freeArea(upToShown(shortM2, cm2PerM2))} more of fixed vents, or take a room-sealed appliance, which needs none.`,
  });
}
