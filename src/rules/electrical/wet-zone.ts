import type { Bank, Electrical } from '../../build/electrical.ts';
import type { Layout, Solid } from '../../build/layout.ts';
import { boreM, openingM2, ventilationFlowM3PerS } from '../../calc/electrical/lead-ventilation.ts';
import { distanceBetween, type Span } from '../../calc/space/distance.ts';
import { gassingFor } from '../../catalogue/electrical/lead-gassing.ts';
import { wetZone } from '../../catalogue/electrical/wet-zone.ts';
import type { Finding, PlanPath, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { chargeAh, length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { electricalCaution, fitCaution } from '../cautions.ts';
import { electrical } from '../circuits.ts';
import { foldPasses } from '../fold-passes.ts';
import { layout } from '../needs.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { keysOfRoom } from '../unknown-room.ts';
import { upToMillimetre } from '../whole-millimetres.ts';

const text: RuleText = {
  id: 'electrical.wet-zone',
  topic: 'electrical',
  title: 'battery and terminals, wet or gassing',
  why: 'Water in a fuse box corrodes it and bridges its terminals, and a charging lead battery gives off gas that explodes.',
  formula:
    'distance from the shower’s outline ≥ 0.6 m below 2.25 m; lead: A = 28 cm² · 0.05 · n · i · C, A of each of two openings, n cells, i gassing current, A/Ah, C capacity, Ah',
  sources: wetZone.citations,
  cautions: [electricalCaution, fitCaution],
  fix: 'Move electrical parts away from the water, and give a lead battery the openings to the outside that it needs.',
  place: ['electrical'],
};

export default defineRule({
  ...text,
  needs: { electrical, layout },
  check: ({ facts }) => {
    const fitted = fittedOf(facts.electrical);
    const wet = facts.layout.solids.filter(({ use }) => use === 'shower');
    return {
      findings: [
        ...(wet.length > 0 ? aboutShowers(wet, fitted, facts.layout) : withoutShower(facts.layout)),
        ...aboutGas(facts.electrical, facts.layout),
      ],
    };
  },
  work: ({ facts }, { subject, measured, path }) => {
    const solid = facts.layout.solids.find(({ name }) => name === subject);
    const showers = facts.layout.solids.filter(({ use }) => use === 'shower');
    const near = solid && nearestTo(showers, solid);
    return measured && near ? distanceSteps(solid, near, path) : undefined;
  },
});

// --- Water ---

interface Near extends Span {
  readonly shower: Solid;
}

/** Outline to outline, by how far the nearest two points are apart along the van and across it. */
function distanceSteps(solid: Solid, { shower, distanceM, from, to }: Near, held: PlanPath): readonly Step[] {
  return [
    {
      what: 'How far from a shower it should be, from the table, for what begins below its height',
      sum: say`it begins at ${length(solid.prism.bottomM)}, below ${length(wetZone.upToM)}`,
      result: length(wetZone.aroundM),
      paths: [held],
    },
    {
      what: `How far the outline of ${solid.name} is from that of ${shower.name}: √(x² + y²)`,
      sum: say`√(${length(Math.abs(to.xM - from.xM))}² along the van + ${length(Math.abs(to.yM - from.yM))}² across it)`,
      result: length(distanceM),
      paths: [solid.path, shower.path],
    },
  ];
}

/** The nearest shower that shares its side of the shell. */
const nearestTo = (showers: readonly Solid[], solid: Solid): Near | undefined =>
  showers
    .filter(({ whereabouts }) => whereabouts === solid.whereabouts)
    .map(
      (shower): Near => ({
        shower,
        ...distanceBetween(solid.prism.outline, shower.prism.outline),
      }),
    )
    .reduce<Near | undefined>(
      (nearest, each) => (nearest === undefined || each.distanceM < nearest.distanceM ? each : nearest),
      undefined,
    );

/** A thing that holds something electrical. */
interface Fitted {
  /** Undefined where the plan does not say where it is. */
  readonly thing: string | undefined;
  readonly what: string;
  readonly path: PlanPath;
}

function fittedOf({ bank, distribution, circuits }: Electrical): readonly Fitted[] {
  return [
    ...(bank ? [{ thing: bank.thing, what: 'the battery', path: [...bank.path, 'thing'] }] : []),
    ...distribution.map(({ name, thing, path }) => ({ thing, what: name, path: [...path, 'thing'] })),
    ...circuits
      .filter(({ feeds }) => !feeds)
      .map(({ name, to, path }) => ({ thing: to, what: `the end of ${name}`, path: [...path, 'to'] })),
  ];
}

function aboutShowers(
  showers: readonly Solid[],
  fitted: readonly Fitted[],
  room: Layout,
): readonly Finding[] {
  const byThing = new Map<string, readonly Fitted[]>();
  const missing: string[] = [];
  for (const each of fitted) {
    if (each.thing === undefined) missing.push(each.path.join('.'));
    else byThing.set(each.thing, [...(byThing.get(each.thing) ?? []), each]);
  }
  const judged: Finding[] = [];
  for (const [thing, held] of byThing) {
    const solid = room.solids.find(({ name }) => name === thing);
    const unplaced = room.unplaced.find(({ name }) => name === thing);
    if (solid) judged.push(...distanceTo(showers, solid, held));
    else if (unplaced) missing.push(...keysOfRoom(thing, unplaced.path, room));
    // What takes no room (`solid: false`) has no place either; another thing would.
    else missing.push(...held.map(({ path }) => path.join('.')));
  }
  const [first] = fitted;
  if (!first) missing.push('electrical.battery.thing');
  if (judged.length + missing.length === 0) return [nothingNear()];
  return [
    ...foldPasses(judged, 'thing'),
    ...(missing.length > 0 ? [unknownPlaces([...new Set(missing)])] : []),
  ];
}

/** The nearest shower that shares its side of the shell; what begins above the zone is out of it. */
function distanceTo(showers: readonly Solid[], solid: Solid, held: readonly Fitted[]): readonly Finding[] {
  const [first] = held;
  if (!first) return [];
  const near = nearestTo(showers, solid);
  if (!near || !exceeds(wetZone.upToM, solid.prism.bottomM)) return [];
  const { shower, distanceM } = near;
  const what = namesOf(held.map((each) => each.what));
  return [
    judge({
      rule: text,
      subject: solid.name,
      path: first.path,
      kind: 'length',
      measured: { value: distanceM, standard: 0 },
      limit: wetZone.aroundM,
      sense: 'at least',
      broken: 'warn',
      reason: whereOf(solid, shower, distanceM, what),
      remedy: (shortfallM) =>
        solid.name === shower.name
          ? say`Keep what must be there to 12 V or 24 V, made for jets of water, with its joints and switch at least ${length(wetZone.aroundM)} away.`
          : say`Move it ${length(upToMillimetre(shortfallM))} further from ${shower.name}, or part them by a watertight wall, and have its terminals face away from the water.`,
    }),
  ];
}

function whereOf(solid: Solid, shower: Solid, distanceM: number, what: string): Phrase {
  const holds = say` It holds ${what}.`;
  if (solid.name === shower.name) return say`It is the shower itself.${holds}`;
  if (distanceM === 0) return say`It stands within the outline of ${shower.name} or touches it.${holds}`;
  return say`It stands ${length(distanceM)} from ${shower.name}.${holds}`;
}

const nothingNear = (): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: 'places near the shower',
    path: text.place,
    reason: say`Nothing electrical in the plan begins lower than ${length(wetZone.upToM)} on the shower's side of floor and walls.`,
  });

const unknownPlaces = (keys: readonly string[]): Finding =>
  observed(text, {
    verdict: 'not checked',
    subject: 'places near the shower',
    path: text.place,
    reason: say`Not everything electrical has a known place, so it may stand within ${length(wetZone.aroundM)} of the shower.`,
    remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
    missing: keys,
  });

/** A plan that says what its things are for has no shower; one that does not may have one. */
function withoutShower({ solids, unplaced }: Layout): readonly Finding[] {
  if (solids.some(({ use }) => use) && unplaced.length === 0)
    return [
      observed(text, {
        verdict: 'pass',
        subject: 'shower',
        path: text.place,
        reason: say`Nothing in the plan is a shower.`,
      }),
    ];
  return [
    observed(text, {
      verdict: 'not checked',
      subject: 'shower',
      path: text.place,
      reason: say`The plan marks no thing as a shower.`,
      remedy: say`If there is one, give it \`use: shower\`, a size and a place; everything electrical belongs ${length(wetZone.aroundM)} away from it.`,
      missing: ['fixtures.NAME.is'],
    }),
  ];
}

// --- Gas of lead batteries ---

function aboutGas({ bank }: Electrical, room: Layout): readonly Finding[] {
  const gassing = bank && gassingFor(bank.chemistry.name, 'boost');
  if (!bank || !gassing) return [];
  const { thing } = bank;
  const solid = room.solids.find(({ name }) => name === thing);
  if (!solid) return [unknownBattery(bank, room)];
  const isOutside = solid.whereabouts === 'under the floor' || solid.whereabouts === 'on the roof';
  const cells = Math.round(bank.voltageV / bank.chemistry.nominalCellV);
  const flow = ventilationFlowM3PerS({
    cells,
    capacityAh: bank.capacityAh,
    gassingPerHour: gassing.gassingPerHour,
  });
  const bore = length(upToMillimetre(boreM(openingM2(flow))));
  const isVented = bank.chemistry.name === 'flooded lead';
  const reason: Phrase = isVented
    ? say`${chargeAh(bank.capacityAh)} of flooded lead give off hydrogen while they charge`
    : say`${chargeAh(bank.capacityAh)} of ${bank.chemistry.name} give off hydrogen where they are overcharged`;
  const opening = say`two openings to the outside of at least ${bore} across, one low and one high, on opposite sides of its box`;
  const common = {
    subject: 'gas of the battery',
    path: [...bank.path, 'thing'],
    sources: gassing.citations,
    cautions: [
      'Hydrogen rises and explodes at a spark: no switch, fuse or relay goes into the box of a lead battery.',
    ],
  };
  if (isOutside)
    return [
      observed(text, {
        ...common,
        verdict: 'pass',
        reason: say`${reason}; it is ${solid.whereabouts}, apart from the air that people breathe. A closed box there needs ${opening}.`,
      }),
    ];
  return [
    observed(text, {
      ...common,
      verdict: isVented ? 'warn' : 'not checked',
      reason: say`${reason}, and it stands where people live; the plan cannot say how its box is aired.`,
      remedy: say`Put it into a box that is closed towards the inside, with ${opening}.`,
    }),
  ];
}

function unknownBattery({ thing, path }: Bank, room: Layout): Finding {
  const unplaced = room.unplaced.find(({ name }) => name === thing);
  const keys =
    thing !== undefined && unplaced ? keysOfRoom(thing, unplaced.path, room) : [`${path.join('.')}.thing`];
  return observed(text, {
    verdict: 'not checked',
    subject: 'gas of the battery',
    path,
    reason: say`A lead battery gives off hydrogen; whether it stands where people live is not known.`,
    remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
    missing: keys,
  });
}
