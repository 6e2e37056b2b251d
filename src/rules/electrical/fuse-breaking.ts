import type { Bank, Circuit, CircuitFuse, Electrical } from '../../build/electrical.ts';
import { idealResistancePerM } from '../../calc/electrical/resistance.ts';
import { prospectiveShortCircuit } from '../../calc/electrical/short-circuit.ts';
import type { Citation } from '../../catalogue/citation.ts';
import {
  breakerNeed,
  breakingCapacityA,
  type FuseFamily,
  fuseFamilies,
  fuseMargin,
} from '../../catalogue/electrical/fuses.ts';
import type { Finding, PlanPath, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { chargeAh, current, resistance, voltage } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { type CircuitFigures, figuresOf } from '../circuits.ts';
import { closestOf, type FusedCircuit, fusesBefore, nearestLimit, notKnown, withFuses } from '../fused.ts';
import { joined, namesOf } from '../routed.ts';
import { highestVoltageStep, type Leg, shortCircuitSteps } from '../working/short-circuit.ts';

const text: RuleText = {
  id: 'electrical.fuse-breaking',
  topic: 'electrical',
  title: 'fuses that can break a short circuit',
  why: 'A fuse that meets more current or voltage than it is made for keeps an arc inside, bursts, and starts the fire it was fitted against.',
  formula:
    'I = E / (R_i + Σ l·ρ / A) ≤ I_breaking; E greatest voltage of the bank, V; R_i its least resistance, Ω; l cold cable from the battery to the fuse, one way, m; ρ = 1/58 Ω·mm²/m at 20 °C; A area of its copper, mm²; the way back counts as none, for it may be the metal of the van',
  sources: [
    {
      title: 'Short circuit behind an internal resistance, with ideal copper at 20 °C: the most there can be',
      provenance: 'computed',
      caution: "The usual estimate, which may be off either way. The battery maker's figure comes first.",
    },
  ],
  cautions: [
    electricalCaution,
    'What a fuse breaks is the figure of its family: the data sheet of the fuse and of its holder decide.',
  ],
  fix: 'Fit fuses of a kind that breaks the current and the voltage of this battery.',
  place: ['electrical', 'circuits'],
};

const backUpPractice: Citation = {
  title:
    'IEC 60364-4-43, 434.5.1: a device may break less than the prospective current if one before it breaks it and lets through no more than this one bears',
  provenance: 'memory',
  caution: 'Remembered. Only the makers can say which two devices match.',
};

interface Supplied {
  readonly electrical: Electrical;
  readonly bank: Bank;
}

const supplied: Need<Supplied> = (build) => {
  const found = withFuses(build);
  const bank = build.electrical?.bank;
  if (found.ok && bank) return given({ electrical: found.value, bank });
  return missing(
    ...(found.ok ? [] : found.missing),
    ...(bank || !build.electrical ? [] : ['electrical.battery']),
  );
};

export default defineRule({
  ...text,
  needs: { supplied },
  check: ({ facts: { supplied: plant } }) => {
    const placed = placesOf(plant);
    const judged = placed.flatMap((place) => judgePlace(place, placed, plant.bank) ?? []);
    const broken = judged.filter(({ finding }) => finding.verdict !== 'pass');
    const unfed = [...figuresOf(plant.electrical).values()].filter(
      ({ circuit, chain }) => circuit.fuse && !chain,
    );
    return {
      findings: [
        ...togetherAtOnePoint(broken),
        ...closestOf(
          judged.flatMap(({ finding }) => (finding.verdict === 'pass' ? [finding] : [])),
          (howMany) => say`${howMany} more fuses have at least as much to spare.`,
        ),
        ...withoutResistance(placed, plant),
        ...notKnown(
          text,
          unfed.map(({ circuit }) => circuit),
          ['electrical.circuits'],
          say`What feeds ${namesOf(unfed.map(({ circuit }) => circuit.from))} from the battery is not in the plan.`,
        ),
      ],
    };
  },
  work: ({ facts: { supplied: plant } }, finding) => {
    const placed = placesOf(plant);
    // Fuses of one family at one point share a finding: its path is that of the one it measured.
    const place = placed.find(({ fuse }) => isSamePath([...fuse.path, 'type'], finding.path));
    return finding.measured && place
      ? stepsOf(plant, place, finding.verdict === 'pass' ? placed.length : 1)
      : undefined;
  },
});

const isSamePath = (one: PlanPath, other: PlanPath): boolean =>
  one.length === other.length && one.every((key, at) => key === other[at]);

function stepsOf({ bank }: Supplied, place: Place, among: number): readonly Step[] | undefined {
  const { circuit, fuse, legs, faultA, breaksA } = place;
  const { family, path: fusePath } = fuse;
  if (breaksA === undefined)
    return [
      {
        what: `The voltage that a fuse of type \`${family.id}\` is made for`,
        result: voltage(madeForV(fuse)),
        paths: [[...fusePath, 'type']],
      },
      highestVoltageStep(bank),
    ];
  if (faultA === undefined || !bank.resistance) return undefined;
  const internalOhm = bank.resistance.leastOhm;
  return shortCircuitSteps(bank, {
    fuse: circuit.name,
    fusePath,
    family,
    legs,
    internalOhm,
    breaksA,
    faultA,
    ...(among > 1 && { nearestOf: among }),
  });
}

/** A fuse with what may flow through it in a short circuit right behind it. */
interface Place extends FusedCircuit {
  readonly figures: CircuitFigures;
  readonly legs: readonly Leg[];
  /** Of the cable before it; what is not known counts as none. */
  readonly cableOhm: number;
  /** Undefined where the resistance of the bank is not known. */
  readonly faultA?: number;
  /** At the voltage of the bank; undefined where that is above what the family is made for. */
  readonly breaksA?: number;
}

function placesOf({ electrical, bank }: Supplied): readonly Place[] {
  return [...figuresOf(electrical).values()].flatMap((figures): Place[] => {
    const { circuit, chain } = figures;
    const { fuse } = circuit;
    if (!fuse || !chain) return [];
    const legs = chain.map((each): Leg => {
      const lengthM = each.name === circuit.name ? (fuse.fromSourceM ?? 0) : (each.wire.outM ?? 0);
      return { circuit: each, lengthM, ohm: coldOhm(each, lengthM) };
    });
    const cableOhm = legs.reduce((sum, { ohm }) => sum + ohm, 0);
    const breaksA = breakingCapacityA(fuse.family, bank.highestV);
    return [
      {
        figures,
        circuit,
        fuse,
        legs,
        cableOhm,
        ...(bank.resistance && { faultA: shortedA(bank.resistance.leastOhm, bank, cableOhm) }),
        ...(breaksA !== undefined && { breaksA }),
      },
    ];
  });
}

const shortedA = (internalOhm: number, { highestV }: Bank, cableOhm: number): number =>
  prospectiveShortCircuit({ emfV: highestV, internalOhm }, cableOhm);

/** The tables have the greatest resistances, which would understate a fault: ideal copper has the least. */
const coldOhm = ({ wire }: Circuit, lengthM: number): number =>
  wire.conductor ? idealResistancePerM(wire.conductor.areaMm2) * lengthM : 0;

interface Judged {
  readonly place: Place;
  readonly finding: Finding;
}

function judgePlace(place: Place, all: readonly Place[], bank: Bank): Judged | undefined {
  const { faultA, breaksA } = place;
  if (breaksA === undefined) return { place, finding: tooMuchVoltage(place, bank) };
  if (faultA === undefined) return undefined;
  const backUp = exceeds(faultA, breaksA) ? backUpOf(place, all) : undefined;
  return { place, finding: tooMuchCurrent({ ...place, faultA, breaksA }, bank, backUp) };
}

const madeForV = ({ family }: CircuitFuse): number => family.breaking.at(-1)?.upToV ?? 0;

function tooMuchVoltage(place: Place, bank: Bank): Finding {
  const { circuit, fuse } = place;
  const upToV = madeForV(fuse);
  return judge({
    rule: text,
    subject: circuit.name,
    path: [...fuse.path, 'type'],
    kind: 'voltage',
    measured: { value: bank.highestV, standard: 0 },
    limit: upToV,
    sense: 'at most',
    broken: 'fail',
    reason: say`The fuse of ${circuit.name} is of type \`${fuse.family.id}\`, made for up to ${voltage(upToV)}; while it is charged the battery has up to ${voltage(bank.highestV)}.`,
    remedy: () =>
      otherFamilies(place, bank) ??
      say`Take a fuse made for ${voltage(bank.highestV)} of direct current or more.`,
    sources: fuse.family.citations,
    cautions: cautionsOf(fuse.family, bank),
  });
}

function tooMuchCurrent(
  place: Place & { readonly faultA: number; readonly breaksA: number },
  bank: Bank,
  backUp: BackUp | undefined,
): Finding {
  const { circuit, fuse, faultA, breaksA } = place;
  const behind = backUp
    ? backUp.breaks
      ? say` The fuse of ${backUp.name} before it can break that, but may open too late to spare this one.`
      : say` The fuse of ${backUp.name} before it is not made for what it may meet itself.`
    : say``;
  const finding = judge({
    rule: text,
    subject: circuit.name,
    path: [...fuse.path, 'type'],
    kind: 'current',
    measured: { value: faultA, standard: 0 },
    limit: breaksA,
    sense: 'at most',
    broken: backUp ? 'warn' : 'fail',
    reason: say`A short circuit right behind the fuse of ${circuit.name} may draw ${current(faultA)}; one of type \`${fuse.family.id}\` breaks ${current(breaksA)} at ${voltage(bank.highestV)}.${behind}`,
    remedy: () => remedyFor(place, bank, breaksA, backUp),
    sources: [
      ...fuse.family.citations,
      ...(bank.resistance?.source === 'catalogue' ? guidance(bank) : []),
      ...(backUp ? [backUpPractice] : []),
    ],
    cautions: cautionsOf(fuse.family, bank),
  });
  const assumed = assumptionsOf(place, bank);
  return assumed.length > 0 ? { ...finding, assumptions: assumed } : finding;
}

const guidance = ({ chemistry }: Bank) => chemistry.resistanceOhmAt100Ah?.citations ?? [];

function cautionsOf({ caution }: FuseFamily, { capacityAh }: Bank): readonly string[] {
  const { ampereHours } = breakerNeed.makersFigureAbove;
  return [
    ...(caution === undefined ? [] : [caution]),
    ...(exceeds(capacityAh, ampereHours)
      ? [
          `Above ${ampereHours} Ah boat practice asks for the battery maker’s own figure of the short-circuit current, or for fuses that break 20 kA at 125 V of direct current.`,
        ]
      : []),
  ];
}

/** What the current rests on that the plan does not say; a cable that is not known makes it higher, never lower. */
function assumptionsOf({ circuit, figures }: Place, { resistance: inside }: Bank): readonly string[] {
  const unknown = (figures.chain ?? []).filter(
    ({ name, wire }) => name !== circuit.name && (wire.outM === undefined || !wire.conductor),
  );
  return [
    ...(inside?.source === 'catalogue'
      ? ['The battery has the least internal resistance that the catalogue gives for its kind and capacity.']
      : []),
    ...(unknown.length > 0
      ? [
          `Cable before the fuse that is not in the plan counts as none: ${namesOf(unknown.map(({ name }) => name))}.`,
        ]
      : []),
  ];
}

/** The fuse that opens for another: a standard lets it, where the makers have matched the two. */
interface BackUp {
  readonly name: string;
  /** It is made for what it may meet at its own place. */
  readonly breaks: boolean;
}

/** The nearest fuse before it that breaks what it may meet, or else the nearest. */
function backUpOf({ figures }: Place, all: readonly Place[]): BackUp | undefined {
  const before = fusesBefore(figures).map(({ circuit: { name } }): BackUp => {
    const place = all.find(({ circuit }) => circuit.name === name);
    const { faultA, breaksA } = place ?? {};
    return { name, breaks: faultA !== undefined && breaksA !== undefined && !exceeds(faultA, breaksA) };
  });
  return before.findLast(({ breaks }) => breaks) ?? before.at(-1);
}

function remedyFor(place: Place, bank: Bank, breaksA: number, backUp: BackUp | undefined): Phrase {
  const other = otherFamilies(place, bank);
  const faultA = current(place.faultA ?? 0);
  const first = backUp
    ? say`${backUp.breaks ? say`Ask` : say`Fit a fuse in ${backUp.name} that breaks what it may meet, and ask`} its maker whether it protects this one up to ${faultA}${other ? say`; or take ${other}` : say``}.`
    : other
      ? say`Take ${other}.`
      : say`Ask makers for a fuse that breaks ${faultA} at ${voltage(bank.highestV)}.`;
  if (bank.resistance?.source !== 'catalogue') return first;
  // Of one battery, as the plan has it.
  const enoughOhm = ((bank.highestV / breaksA - place.cableOhm) * bank.inParallel) / bank.inSeries;
  return say`${first} The battery's resistance is assumed: give its maker's figure as \`electrical.battery.internal_resistance\`; from ${resistance(upToTenthMilliohm(enoughOhm))} for each battery on, this fuse breaks what it may meet.`;
}

const upToTenthMilliohm = (ohm: number): number => Math.ceil(ohm * 1e4 - 1e-6) / 1e4;

/** Families that break the current at this voltage and have a rating for this circuit. */
function otherFamilies({ circuit, fuse, figures, faultA }: Place, bank: Bank): Phrase | undefined {
  const leastA = figures.designA === undefined ? fuse.ratingA : figures.designA * fuseMargin.value;
  const mostA = figures.ampacity?.deratedA ?? fuse.ratingA;
  const found = fuseFamilies.flatMap((family): Phrase[] => {
    const breaksA = breakingCapacityA(family, bank.highestV);
    const ratingA =
      family.ratingsA.find((each) => each === fuse.ratingA) ??
      family.ratingsA.findLast((each) => !exceeds(leastA, each) && !exceeds(each, mostA));
    if (breaksA === undefined || ratingA === undefined || exceeds(faultA ?? 0, breaksA)) return [];
    return [say`\`${family.id}\` with ${current(ratingA)} (breaks ${current(breaksA)})`];
  });
  return found.length === 0 ? undefined : say`a fuse of type ${joined(found, ' or ')} for ${circuit.name}`;
}

/** Fuses of one family at one point have the same defect: the one with the most to break stands for them. */
function togetherAtOnePoint(broken: readonly Judged[]): readonly Finding[] {
  const points = new Map<string, Judged[]>();
  for (const each of broken) {
    const { circuit, fuse } = each.place;
    const { verdict, measured } = each.finding;
    const key = JSON.stringify([circuit.from, fuse.family.id, verdict, measured?.kind]);
    points.set(key, [...(points.get(key) ?? []), each]);
  }
  return [...points.values()].flatMap((together) => {
    const worst = nearestLimit(together.map(({ finding }) => finding));
    const [first] = together;
    if (!worst || !first) return [];
    if (together.length === 1) return [worst];
    const names = together.map(({ place }) => place.circuit.name);
    const others = names.filter((name) => name !== worst.subject);
    return [
      {
        ...worst,
        subject: namesOf(names),
        reason: say`${worst.reason} The same holds for ${namesOf(others)}, also from ${first.place.circuit.from}.`,
      },
    ];
  });
}

function withoutResistance(placed: readonly Place[], { bank }: Supplied): readonly Finding[] {
  if (bank.resistance) return [];
  const open = placed.filter(({ breaksA }) => breaksA !== undefined);
  return notKnown(
    text,
    open.map(({ circuit }) => circuit),
    ['electrical.battery.internal_resistance'],
    say`What a short circuit draws follows from the internal resistance of the battery, which neither the plan nor the catalogue has for ${bank.chemistry.name} of ${chargeAh(bank.blockCapacityAh)}.`,
  );
}
