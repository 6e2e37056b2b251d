import type { Circuit, Electrical } from '../../build/electrical.ts';
import type { Citation } from '../../catalogue/citation.ts';
import { ampacityTable } from '../../catalogue/electrical/ampacity.ts';
import { groupingLists, thermalInsulation } from '../../catalogue/electrical/derating.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { count, current, factor, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { choiceFor, choiceInWords, choiceMethod } from '../circuit-choice.ts';
import { type Ampacity, ampacityFor, type CircuitFigures, figuresOf } from '../circuits.ts';
import { sizeText } from '../conductor-text.ts';
import { closestOf, notKnown, withCircuits } from '../fused.ts';
import { observed } from '../observed.ts';
import { bearsSteps, carriesStep } from '../working/current.ts';

const method: Citation = {
  title:
    'Heat given off in proportion to the difference of temperatures; tables read at the next lower size and insulation, never between',
  provenance: 'computed',
};

const text: RuleText = {
  id: 'electrical.ampacity',
  topic: 'electrical',
  title: 'current that the cables bear',
  why: 'A cable that carries more than it can give off as heat melts its insulation, and that starts fires behind panels.',
  formula:
    'I_b ≤ I_t · C_a · C_g · C_i in A; C_a = √((T_c − T_a) / (T_c − T_ref)) in °C, C_g for conductors that lie together, C_i within insulation; no factor above 1',
  sources: [method],
  cautions: [electricalCaution],
  fix: 'Take a thicker conductor, insulation that bears more, or a cooler place with fewer cables beside it.',
  place: ['electrical', 'circuits'],
};

export default defineRule({
  ...text,
  needs: { electrical: withCircuits },
  check: ({ facts }) => {
    const { electrical } = facts;
    const figures = [...figuresOf(electrical).values()];
    const judged: Finding[] = [];
    const unknown: Circuit[] = [];
    for (const each of figures) {
      const { circuit, designA, ampacity } = each;
      if (circuit.wire.conductor && (!ampacity || ampacity.deratedA === 0))
        judged.push(carriesNothing(each, ampacity));
      else if (ampacity && designA !== undefined) judged.push(loadingOf(electrical, each, designA, ampacity));
      else unknown.push(circuit);
    }
    return {
      findings: [
        ...judged.filter(({ verdict }) => verdict !== 'pass'),
        ...closestOf(
          judged.filter(({ verdict }) => verdict === 'pass'),
          (more) => say`${more} more use less of what they may carry.`,
        ),
        ...notKnown(
          text,
          unknown,
          // Lengths have no part in it.
          figures.flatMap(({ missing }) => missing.filter((key) => !key.endsWith('.length'))),
          say`What a cable carries and may carry needs its conductor and every load that hangs on it.`,
        ),
      ],
    };
  },
  work: ({ facts: { electrical } }, finding) => {
    const figures = figuresOf(electrical).get(finding.subject);
    return finding.measured && figures
      ? [...bearsSteps(figures), carriesStep(electrical, figures)]
      : undefined;
  },
});

function loadingOf(
  electrical: Electrical,
  { circuit }: CircuitFigures,
  designA: number,
  ampacity: Ampacity,
): Finding {
  const { deratedA } = ampacity;
  return judge({
    rule: text,
    subject: circuit.name,
    path: circuit.path,
    kind: 'current',
    measured: { value: designA, standard: 0 },
    limit: deratedA,
    sense: 'at most',
    broken: 'fail',
    reason: say`${nameOf(circuit)} carries ${current(designA)} in steady use and may carry ${current(deratedA)}: ${factorsOf(circuit, ampacity)}.`,
    sources: [...sourcesOf(ampacity), choiceMethod],
    cautions: cautionsOf(ampacity),
    remedy: () => {
      const choice = choiceFor(electrical, circuit);
      if (choice) return choiceInWords(choice);
      const areaMm2 = circuit.wire.conductor?.areaMm2 ?? 0;
      const better = betterPlace(circuit, areaMm2, designA);
      return (
        better ??
        say`Use more copper: it must carry at least ${current(designA)} and the fuse above that, or take ${current(designA - deratedA)} of load off.`
      );
    },
  });
}

const nameOf = ({ name, wire }: Circuit): Phrase =>
  wire.size ? say`${name} (${sizeText(wire.size, wire.conductor)})` : say`${name}`;

/** The table, the current it has, and what is taken off. */
function factorsOf(
  { wire }: Circuit,
  { listed, table, ambient, grouping, thermalInsulation: within }: Ampacity,
) {
  const { system } = ampacityTable(table);
  const base = say`${current(listed.currentA)} for ${listed.row.size} ${system} and insulation for ${temperatureC(listed.insulationC)} by the table “${table}” at ${temperatureC(listed.ambientC)}`;
  return say`${base}, × ${factor(ambient)} in ${temperatureC(wire.ambientC)} (${wire.lies}), × ${factor(grouping)} for ${count(2 * wire.bundled)} conductors together, × ${factor(within)} ${wire.lies === 'in insulation' ? 'within insulation' : 'not within insulation'}`;
}

const sourcesOf = ({ listed, thermalInsulation: within }: Ampacity): readonly Citation[] => [
  ...new Set([
    ...listed.citations,
    ...(groupingLists.find(({ id }) => id === 'small craft')?.citations ?? []),
    ...(within < 1 ? thermalInsulation.citations : []),
  ]),
];

const cautionsOf = ({ table, thermalInsulation: within }: Ampacity): readonly string[] => {
  const { caution } = ampacityTable(table);
  return [...(caution === undefined ? [] : [caution]), ...(within < 1 ? [thermalInsulation.caution] : [])];
};

/** Off the table: too thin, too warm a place, or an insulation below all that are listed. */
function carriesNothing({ circuit }: CircuitFigures, ampacity: Ampacity | undefined): Finding {
  const { wire } = circuit;
  const place = say`with insulation for ${temperatureC(wire.insulationC)} in ${temperatureC(wire.ambientC)} (${wire.lies})`;
  return observed(text, {
    verdict: 'fail',
    subject: circuit.name,
    path: circuit.path,
    reason: say`${nameOf(circuit)}: no table lets it carry anything there, ${place}.`,
    remedy:
      betterPlace(circuit, wire.conductor?.areaMm2 ?? 0, 0) ??
      say`Use at least ${sizeText({ system: 'mm²', size: '0.75' })}, or 18 AWG, with insulation for at least ${temperatureC(70)}: thinner cable and poorer insulation are in no table for vehicles and boats.`,
    sources: ampacity ? sourcesOf(ampacity) : [],
    cautions: ampacity ? cautionsOf(ampacity) : [],
  });
}

/** Insulation that bears more, where that alone is enough. */
function betterPlace({ wire }: Circuit, areaMm2: number, neededA: number): Phrase | undefined {
  for (const insulationC of [85, 105, 125]) {
    if (insulationC <= wire.insulationC) continue;
    const deratedA = ampacityFor(areaMm2, { ...wire, insulationC })?.deratedA ?? 0;
    if (deratedA > 0 && deratedA >= neededA)
      return say`Use the same size with insulation for ${temperatureC(insulationC)}, which carries ${current(deratedA)} there, or lay it where it is cooler than ${temperatureC(wire.ambientC)}.`;
  }
  return undefined;
}
