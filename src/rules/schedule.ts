import type { Circuit, Draw, Electrical } from '../build/electrical.ts';
import type { Finding } from '../engine/finding.ts';
import { current, length, type Measure, power, share, voltage } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import type { Report } from '../engine/report.ts';
import type { Schedule, ScheduleRow } from '../engine/schedule.ts';
import type { Judged } from '../engine/waive.ts';
import { electricalCaution, mainsCaution } from './cautions.ts';
import { type CircuitFigures, figuresOf } from './circuits.ts';
import { sizeText } from './conductor-text.ts';
import { isFused, missingOf } from './schedule-missing.ts';
import { notesOf } from './schedule-notes.ts';
import { worstStanding } from './schedule-standing.ts';
import { hasMains, plainVolts, tablesOf } from './schedule-tables.ts';

/** Everything about the electrical part of a plan that an installer asks for, with what the checks say about it. */
export function scheduleOf(electrical: Electrical, report: Report): Schedule {
  const figures = [...figuresOf(electrical).values()];
  const findings = report.findings.filter(({ topic }) => topic === 'electrical');
  return {
    file: report.file,
    name: report.name,
    units: report.units,
    cautions: [electricalCaution, ...(hasMains(electrical) ? [mainsCaution] : [])],
    circuits: figures.map((each) => rowOf(each, electrical, findings)),
    legend: legendOf(electrical, findings),
    tables: tablesOf(electrical, (path) => worstOf(path, findings)),
    missing: missingOf(electrical, figures),
    assumed: report.assumptions.filter(({ path }) => path[0] === 'electrical').length,
  };
}

function rowOf(figures: CircuitFigures, electrical: Electrical, findings: readonly Finding[]): ScheduleRow {
  const { circuit, designA, dropV, ampacity } = figures;
  const { name, from, to, wire, fuse } = circuit;
  const judged = verdictOf(figures, findings);
  const load = loadText(circuit);
  const oneWay = lengthText(wire);
  return {
    name,
    from,
    to,
    ...(load && { load }),
    ...(designA !== undefined && { designCurrent: current(designA) }),
    ...(wire.size && { conductor: sizeText(wire.size, wire.conductor) }),
    ...(oneWay && { length: oneWay }),
    ...(fuse && { fuse: fuseText(fuse) }),
    ...(dropV !== undefined && {
      drop: { voltage: voltage(dropV), share: share(dropV / electrical.nominalV) },
    }),
    ...(ampacity && { ampacity: current(ampacity.deratedA) }),
    ...(judged && { verdict: judged.verdict }),
    ...(judged?.waived && { waived: { as: judged.waived.as } }),
    notes: notesOf(figures),
  };
}

/** The draw of a load, in what the plan gives it in. */
const drawMeasure = (draw: Draw): Measure => ('powerW' in draw ? power(draw.powerW) : current(draw.currentA));

const loadText = ({ load, feeds, charges }: Circuit): Phrase | undefined => {
  if (load) return charges ? say`${drawMeasure(load)} in` : [drawMeasure(load)];
  return feeds ? ['sum'] : undefined;
};

function lengthText({ outM, backM, lengthFrom }: Circuit['wire']): Phrase | undefined {
  if (outM === undefined || lengthFrom === undefined) return undefined;
  const from = lengthFrom === 'typed' ? 'typed' : 'by route';
  return backM === undefined || backM === outM
    ? say`${length(outM)} ${from}`
    : say`${length(outM)} ${from}, back ${length(backM)}`;
}

function fuseText({ family, ratingA, fromSourceM }: NonNullable<Circuit['fuse']>): Phrase {
  const fuse = say`${family.id}: ${current(ratingA)}`;
  if (fromSourceM === undefined) return fuse;
  return fromSourceM === 0 ? say`${fuse}, at its source` : say`${fuse}, at ${length(fromSourceM)}`;
}

const startsWith = (path: Finding['path'], start: Finding['path']): boolean =>
  start.every((part, at) => path[at] === part);

const worstOf = (path: Finding['path'], findings: readonly Finding[]): Judged | undefined =>
  worstStanding(findings.filter((finding) => startsWith(finding.path, path)));

/**
 * The worst that the checks say about a circuit. A check has one pass for all the circuits that keep its limit, and one
 * finding for all that lack keys; so a circuit that no finding is about passes if nothing is missing of it, its fuse
 * or one before it included.
 */
function verdictOf(figures: CircuitFigures, findings: readonly Finding[]): Judged | undefined {
  const { circuit, missing } = figures;
  const key = `${circuit.path.join('.')}.`;
  const found = findings.flatMap((finding): Judged[] => {
    const { path, subject, verdict, missing: keys = [] } = finding;
    const about = startsWith(path, circuit.path) || subject === circuit.name;
    if (verdict === 'not checked' && keys.length > 0)
      return keys.some((each) => each.startsWith(key)) ? [finding] : [];
    return about ? [finding] : [];
  });
  if (missing.length > 0 || !isFused(figures)) found.push({ verdict: 'not checked' });
  return (
    worstStanding(found) ??
    (findings.some(({ verdict }) => verdict === 'pass') ? { verdict: 'pass' } : undefined)
  );
}

const legendOf = ({ nominalV, bank }: Electrical, findings: readonly Finding[]): Phrase => {
  const least = bank ? `, at ${plainVolts(bank.lowestV)}, the least that the battery gives` : '';
  return [
    `Load: what is drawn; “sum” is all that hangs on the end of a circuit, “in” comes from a charger. Design current: in steady use with all that is on at once${least}. Length: one way. Fuse: type, rating, how far along the conductor from its source. Drop: from the battery to the end of the circuit, out and back, with warm copper; per cent of ${plainVolts(nominalV)}. Ampacity: of the conductor where it lies. Verdict: the worst that \`storystick check\` says about the circuit${findings.some(({ waived }) => waived) ? '; “waived”: a waiver of the plan makes it stand aside; “acknowledged”: a waiver names it, and it counts as before' : ''}. –: not known.`,
  ];
};
