import type { Fanned, KnownFan, OpenWay } from '../../build/fanned.ts';
import { orificePressurePa, roomAirKgM3, sharpEdgeDischarge } from '../../calc/air/orifice.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { airFlow, draught, freeArea, pressure } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { ventsStep } from './vents.ts';

/*
 * What fans move through what is open: at one pressure in the room as much comes in as goes out.
 */

export const openStep = (openings: readonly OpenWay[]): Step =>
  ventsStep('Open beside the fans, with windows and doors shut: A', openings);

/** What stands against a fan: the room below the outside against one that blows out, above it against one that blows in. */
const againstPa = ({ blows }: KnownFan, { depressionPa }: Fanned): number =>
  blows === 'exhaust' ? depressionPa : -depressionPa;

const whereRoomIs = ({ depressionPa }: Fanned): Phrase =>
  say`${draught(Math.abs(depressionPa))} ${depressionPa < 0 ? 'above' : 'below'} the outside`;

/** Every fan at the pressure at which all of it agrees; those that blow in count against those that blow out. */
export function fansStep(fans: readonly KnownFan[], together: Fanned): Step {
  const rows = fans.map((known, index): Part => {
    const flowM3PerS = together.flowsM3PerS[index] ?? 0;
    return {
      name: `${known.fan.name}, ${known.blows === 'exhaust' ? 'out' : 'in'}`,
      path: known.fan.path,
      origin: 'computed',
      values: [airFlow(known.openFlowM3PerS), draught(known.stallPa), draught(againstPa(known, together))],
      adds: airFlow(known.blows === 'exhaust' ? flowM3PerS : -flowM3PerS),
    };
  });
  return {
    what: 'What the fans blow out, less what they blow in: Σ Q_open·(1 − d/p_stall)',
    sum: say`with the room ${whereRoomIs(together)}: there the fans and the openings agree`,
    result: airFlow(rows.reduce((sum, { adds }) => sum + adds.value, 0)),
    parts: { columns: ['in the open', 'stalls at', 'against it', 'adds'], rows },
    paths: fans.map(({ fan }) => fan.path),
  };
}

/** The other side of the balance. */
export function openingsFlowStep({ openM2, depressionPa, openingM3S }: Fanned): Step {
  const way = depressionPa < 0 ? 'out' : 'in';
  const what = `What comes ${way} through the openings at that pressure: C_d·A·√(2·d/ρ), as much as the fans move`;
  if (openM2 === 0)
    return { what: `What comes ${way} through the openings`, sum: say`nothing is open`, result: airFlow(0) };
  return {
    what,
    sum: say`${depressionPa < 0 ? '−' : ''}${String(sharpEdgeDischarge)} · ${freeArea(openM2)} · √(2 · ${draught(Math.abs(depressionPa))} / ${roomAirKgM3.toFixed(4)} kg/m³), in m², then times 3600 for an hour`,
    result: airFlow(openingM3S),
  };
}

/** Both sides of the balance, from what is open. */
export const balanceSteps = (fans: readonly KnownFan[], together: Fanned): readonly Step[] => [
  openStep(together.openings),
  fansStep(fans, together),
  openingsFlowStep(together),
];

/** One fan on its line at what stands against it. */
export function fanStep(known: KnownFan, flowM3PerS: number, together: Fanned): Step {
  const { fan, openFlowM3PerS, stallPa } = known;
  const pa = againstPa(known, together);
  return {
    what: `What ${fan.name} moves: Q_open·(1 − d/p_stall)`,
    sum: fanSum(pa, openFlowM3PerS, stallPa),
    result: airFlow(flowM3PerS),
    paths: [fan.path],
  };
}

function fanSum(againstIt: number, openFlowM3PerS: number, stallPa: number): Phrase {
  if (againstIt <= 0) return say`nothing stands against it, so all of its ${airFlow(openFlowM3PerS)}`;
  return againstIt < stallPa
    ? say`${airFlow(openFlowM3PerS)} · (1 − ${draught(againstIt)} / ${draught(stallPa)})`
    : say`${draught(againstIt)} stand against it, and at ${draught(stallPa)} it stalls: it moves nothing`;
}

/** How far the fans pull the room down: the openings' formula solved for the pressure. */
export function depressionStep({ openM2, depressionPa, openingM3S }: Fanned): Step {
  const what = 'How far the room is then below the outside: d = ρ/2·(Q/(C_d·A))²';
  if (openM2 === 0)
    return {
      what,
      sum: say`no air comes in, so it falls to where the strongest fan stalls`,
      result: pressure(depressionPa),
    };
  const byOpeningPa = orificePressurePa({ areaM2: openM2 }, openingM3S);
  return {
    what,
    sum: say`${roomAirKgM3.toFixed(4)} kg/m³ / 2 · (${airFlow(openingM3S)} / (${String(sharpEdgeDischarge)} · ${freeArea(openM2)}))², in m³/s and m²; 100 Pa are 1 mbar`,
    result: pressure(byOpeningPa),
  };
}
