import type { Circuit, CircuitFuse, Electrical } from '../../build/electrical.ts';
import type { Citation } from '../../catalogue/citation.ts';
import { type FuseDistance, fuseDistances } from '../../catalogue/electrical/fuses.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { type CircuitFigures, figuresOf, theBattery } from '../circuits.ts';
import { closestOf, fusesBefore, notKnown, withFuses } from '../fused.ts';
import { namesOf } from '../routed.ts';
import { downToMillimetre } from '../whole-millimetres.ts';

const text: RuleText = {
  id: 'electrical.fuse-distance',
  topic: 'electrical',
  title: 'fuses close to the source',
  why: 'Nothing protects a cable between its source and its fuse: where that piece chafes through, it glows.',
  formula: 'l ≤ l_max; l length of conductor from its source to its fuse, l_max by whether it is sheathed, m',
  sources: [
    {
      title: 'The shortest of the published lengths that were read, for boats; none for vehicles was found',
      provenance: 'own choice',
    },
  ],
  cautions: [electricalCaution],
  fix: 'Move the fuse towards the source of its current, or sheathe the cable up to it.',
  place: ['electrical', 'circuits'],
};

export default defineRule({
  ...text,
  needs: { electrical: withFuses },
  check: ({ facts: { electrical } }) => {
    const judged: Finding[] = [];
    const unknown: Circuit[] = [];
    for (const figures of figuresOf(electrical).values()) {
      const { circuit } = figures;
      if (!circuit.fuse || isProtectedBefore(figures)) continue;
      const distanceM = distanceTo(circuit, circuit.fuse, electrical);
      if (distanceM === undefined) unknown.push(circuit);
      else judged.push(farAway(circuit, circuit.fuse, distanceM));
    }
    return {
      findings: [
        ...judged.filter(({ verdict }) => verdict !== 'pass'),
        ...closestOf(
          judged.filter(({ verdict }) => verdict === 'pass'),
          (howMany) => say`${howMany} more keep their limit with at least as much to spare.`,
        ),
        ...notKnown(
          text,
          unknown,
          unknown.map(({ path }) => [...path, 'fuse', 'from_source'].join('.')),
          say`How far the fuse of ${namesOf(unknown.map(({ name }) => name))} is from where the cable begins is not in the plan.`,
        ),
      ],
    };
  },
  work: ({ facts: { electrical } }, finding) => {
    const circuit = electrical.circuits.find(({ name }) => name === finding.subject);
    if (!finding.measured || !circuit?.fuse) return undefined;
    const { from, fuse } = circuit;
    const { atMostM, among } = reachOf(fuse.sheathed, from === theBattery);
    return [
      {
        what: `How far off it may be, by the shortest of the ${among} published lengths that were read`,
        sum: say`from ${from === theBattery ? 'the battery' : from}, ${fuse.sheathed ? 'in a sheath all the way' : 'without a sheath'}`,
        result: length(atMostM),
        paths: [
          [...circuit.path, 'from'],
          [...fuse.path, 'sheathed'],
        ],
      },
      {
        what: `How far the fuse of ${circuit.name} is from where its cable begins: l`,
        ...(fuse.fromSourceM === undefined && { sum: say`a fuse of a fuse box sits in it` }),
        result: length(distanceTo(circuit, fuse, electrical) ?? 0),
        paths: [[...fuse.path, 'from_source']],
      },
    ];
  },
});

/** A fuse before it that already suits its conductor: then its own may be anywhere. */
function isProtectedBefore(figures: CircuitFigures): boolean {
  const before = fusesBefore(figures).at(-1);
  return (
    before !== undefined &&
    figures.ampacity !== undefined &&
    !exceeds(before.fuse.ratingA, figures.ampacity.deratedA)
  );
}

/** As the plan says, or by where it sits. */
const distanceTo = (
  circuit: Circuit,
  { fromSourceM }: CircuitFuse,
  electrical: Electrical,
): number | undefined => fromSourceM ?? distanceWithin(circuit, electrical);

/** A fuse of a fuse box sits in it. */
const distanceWithin = ({ from }: Circuit, { distribution }: Electrical): number | undefined =>
  distribution.some(({ name, kind }) => name === from && kind === 'fuse box') ? 0 : undefined;

interface Reach {
  readonly atMostM: number;
  /** How many published lengths were compared. */
  readonly among: number;
  readonly citations: readonly Citation[];
}

/** The strictest of the rows that were read, for a conductor that begins there and lies like that. */
function reachOf(sheathed: boolean, atBattery: boolean): Reach {
  const lengthOf = (row: FuseDistance): number | undefined => {
    if (!sheathed) return row.openM;
    return atBattery ? (row.batterySheathedM ?? row.sheathedM) : row.sheathedM;
  };
  const rows = fuseDistances.filter(
    (row) => lengthOf(row) !== undefined && row.citations.some(({ provenance }) => provenance === 'read'),
  );
  const atMostM = Math.min(...rows.map((row) => lengthOf(row) ?? Number.POSITIVE_INFINITY));
  return {
    atMostM,
    among: rows.length,
    citations: rows.filter((row) => lengthOf(row) === atMostM).flatMap(({ citations }) => citations),
  };
}

function farAway(circuit: Circuit, fuse: CircuitFuse, distanceM: number): Finding {
  const { name, from } = circuit;
  const atBattery = from === theBattery;
  const open = reachOf(false, atBattery);
  const inSheath = reachOf(true, atBattery);
  const { atMostM, citations } = fuse.sheathed ? inSheath : open;
  const source = atBattery ? 'the battery' : from;
  const lies = fuse.sheathed ? 'in a sheath' : 'without a sheath';
  const mayBeSheathed = !fuse.sheathed && !exceeds(distanceM, inSheath.atMostM);
  const closer = say`Put the fuse within ${length(downToMillimetre(atMostM))} of ${source}, along the cable`;
  return judge({
    rule: text,
    subject: name,
    path: [...fuse.path, 'from_source'],
    kind: 'length',
    measured: { value: distanceM, standard: 0 },
    limit: atMostM,
    sense: 'at most',
    broken: 'warn',
    reason:
      distanceM === 0
        ? say`The fuse of ${name} sits right at ${source}.`
        : say`The cable of ${name} runs ${length(distanceM)} from ${source} to its fuse, ${lies}: no fuse protects that piece.`,
    remedy: () =>
      mayBeSheathed
        ? say`${closer}, or lay those ${length(distanceM)} in a sheath or conduit all the way and write \`sheathed: true\`.`
        : fuse.sheathed
          ? say`${closer}.`
          : say`${closer}, or within ${length(downToMillimetre(inSheath.atMostM))} with a sheath or conduit all the way.`,
    sources: citations,
  });
}
