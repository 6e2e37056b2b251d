import type { Build } from '../../build/build.ts';
import type { Protection } from '../../build/gas.ts';
import type { Box3, Layout } from '../../build/layout.ts';
import type { PlaceInVan } from '../../calc/space/route.ts';
import { protectionReach } from '../../catalogue/air/still-night.ts';
import type { Citation } from '../../catalogue/citation.ts';
import { gasLimitFor } from '../../catalogue/gas/limits.ts';
import { gasRequirementFor } from '../../catalogue/gas/requirements.ts';
import type { Finding, PlanPath } from '../../engine/finding.ts';
import { exceeds } from '../../engine/judge.ts';
import { length, mass } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { isGasAboard } from '../air-facts.ts';
import { combustionCaution, escapeCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { upToShown } from '../shown-digits.ts';
import { upToMillimetre } from '../whole-millimetres.ts';

const text: RuleText = {
  id: 'air.extinguisher',
  topic: 'air',
  title: 'fire extinguisher and fire blanket',
  why: 'A pan or a cable that burns is put out in the first minute or not at all: what puts it out is where one can take it on the way out.',
  formula: 'dry powder m ≥ 1 kg, within 1 m of a way out; blanket within 1.5 m of the cooker, not over it',
  sources: protectionReach.citations,
  cautions: [
    combustionCaution,
    escapeCaution,
    'Get people out first. Which extinguisher and how many, and how often they are serviced, is for local rules and fire services.',
  ],
  fix: 'Keep an extinguisher by the way out and a fire blanket by the cooker.',
  lifeSafety: true,
  limits: ['extinguisher-mass'],
  place: ['protection', 'extinguisher'],
};

const protection: Need<Protection> = (build) =>
  build.protection ? given(build.protection) : missing('protection.extinguisher', 'protection.fire_blanket');

export default defineRule({
  ...text,
  needs: { protection },
  check: ({ build, facts }) => {
    const looked = [extinguisherSeen(facts.protection, build), ...blanketSeen(facts.protection, build)];
    const keys = looked.flatMap(({ missing: lacking }) => lacking ?? []);
    const faults = looked.filter(({ fault }) => fault !== undefined);
    const good = looked.filter((each) => each.fault === undefined && each.missing === undefined);
    return {
      findings: [...faults.flatMap(faulty), ...unsaid(looked, keys), ...present(good)],
    };
  },
});

interface Seen {
  readonly subject: string;
  readonly path: PlanPath;
  readonly words: Phrase;
  readonly fault?: Phrase;
  readonly remedy?: Phrase;
  readonly missing?: readonly string[];
  readonly citations: readonly Citation[];
  readonly cautions: readonly string[];
}

// --- Extinguisher ---

function extinguisherSeen({ extinguisher }: Protection, build: Build): Seen {
  const row = gasLimitFor('extinguisher-mass', build.codes);
  const subject = 'fire extinguisher';
  const common = { subject, citations: row.citations, cautions: row.cautions };
  if (!extinguisher)
    return {
      ...common,
      path: ['protection'],
      words: [],
      fault: say`The plan has no fire extinguisher.`,
      remedy: say`Fit 1 of dry powder with ${mass(row.value)} or more, within ${length(protectionReach.extinguisherFromExitM)} of a door that leads out.`,
    };
  const { path, kind, holdsKg, place } = extinguisher;
  if (kind === 'dry powder' && holdsKg !== undefined && exceeds(row.value, holdsKg))
    return {
      ...common,
      path: [...path, 'holds'],
      words: [],
      fault: say`The fire extinguisher holds ${mass(holdsKg)} of dry powder; a handbook asks for ${mass(row.value)}.`,
      remedy: say`Take one with ${mass(upToShown(row.value - holdsKg))} more.`,
    };
  const away = fromExitM(place, build.layout);
  if (away !== undefined && exceeds(away, protectionReach.extinguisherFromExitM))
    return {
      ...common,
      path,
      words: [],
      fault: say`The fire extinguisher is ${length(away)} from the nearest way out: who fetches it may be cut off.`,
      remedy: say`Put it ${length(upToMillimetre(away - protectionReach.extinguisherFromExitM))} or more nearer to a door that leads out.`,
    };
  const lacking = [
    ...(kind === undefined ? [`${path.join('.')}.kind`] : []),
    ...(holdsKg === undefined ? [`${path.join('.')}.holds`] : []),
    ...(place === undefined ? [`${path.join('.')}.thing`] : []),
    ...(place !== undefined && away === undefined ? ['van.openings'] : []),
  ];
  return {
    ...common,
    path,
    words: say`a fire extinguisher${holdsKg === undefined ? '' : say` of ${mass(holdsKg)}${kind === undefined ? '' : ` ${kind}`}`}${away === undefined ? '' : away === 0 ? ' at a way out' : say` ${length(away)} from a way out`}`,
    ...(lacking.length > 0 && { missing: lacking }),
  };
}

/** Across, to the nearest door or way out; in the cab its doors are at hand. */
function fromExitM(place: PlaceInVan | undefined, layout: Layout | undefined): number | undefined {
  if (!place || !layout) return undefined;
  if (place.xM < 0) return 0;
  const exits = layout.openings.filter((opening) => opening.kind === 'door' || opening.escape);
  return exits.length === 0 ? undefined : Math.min(...exits.map(({ box }) => acrossToBoxM(place, box)));
}

const outside = (value: number, least: number, most: number): number =>
  Math.max(least - value, 0, value - most);

const acrossToBoxM = ({ xM, yM }: PlaceInVan, box: Box3): number =>
  Math.hypot(outside(xM, box.leastXM, box.mostXM), outside(yM, box.leastYM, box.mostYM));

// --- Blanket ---

/** Asked for where something is cooked on. */
function blanketSeen({ fireBlanket }: Protection, build: Build): readonly Seen[] {
  const cookers = build.layout?.solids.filter(({ use }) => use === 'cooker') ?? [];
  const isCooking = cookers.length > 0 || build.gas?.appliances.some(({ use }) => use === 'cooking') === true;
  if (!isCooking && !fireBlanket && !isGasAboard(build)) return [];
  const row = gasRequirementFor('fire-blanket', build.codes);
  const common = { subject: 'fire blanket', citations: row.citations, cautions: row.cautions };
  const reachM = protectionReach.blanketFromCookerM;
  if (!fireBlanket)
    return [
      {
        ...common,
        path: ['protection'],
        words: [],
        fault: say`The plan has no fire blanket, and something is cooked on aboard.`,
        remedy: say`Hang 1 within ${length(reachM)} of the cooker, where flames from a pan do not reach it.`,
      },
    ];
  const { path, place } = fireBlanket;
  const [cooker] = cookers;
  if (!place || !cooker)
    return [
      {
        ...common,
        path,
        words: say`a fire blanket`,
        missing: [
          ...(place ? [] : [`${path.join('.')}.at`]),
          ...(cooker || !isCooking ? [] : ['fixtures.NAME.is']),
        ],
      },
    ].map((seen) => (seen.missing.length > 0 ? seen : { ...common, path, words: seen.words }));
  const apartM = Math.min(...cookers.map(({ box }) => acrossToBoxM(place, box)));
  if (exceeds(apartM, reachM))
    return [
      {
        ...common,
        path: [...path, 'at'],
        words: [],
        fault: say`The fire blanket is ${length(apartM)} across from the cooker.`,
        remedy: say`Hang it ${length(upToMillimetre(apartM - reachM))} or more nearer, but not over the flames.`,
      },
    ];
  const over = cookers.some(({ box }) => acrossToBoxM(place, box) === 0 && place.zM >= box.topM);
  return over
    ? [
        {
          ...common,
          path: [...path, 'at'],
          words: [],
          fault: say`The fire blanket hangs over the cooker, where flames from a pan reach it first.`,
          remedy: say`Hang it beside the cooker, within ${length(reachM)} of it.`,
        },
      ]
    : [{ ...common, path, words: say`a fire blanket ${length(apartM)} across from the cooker` }];
}

// --- Findings ---

const faulty = ({ subject, path, fault, remedy, citations, cautions }: Seen): readonly Finding[] =>
  fault === undefined
    ? []
    : [
        observed(text, {
          verdict: 'warn',
          subject,
          path,
          reason: fault,
          remedy,
          sources: citations,
          cautions,
        }),
      ];

function unsaid(looked: readonly Seen[], keys: readonly string[]): readonly Finding[] {
  const [first] = looked.filter((each) => each.missing !== undefined);
  if (!first) return [];
  return [
    observed(text, {
      verdict: 'not checked',
      subject: first.subject,
      path: first.path,
      reason: say`The plan does not say enough of its ${first.subject}.`,
      remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
      missing: keys,
      sources: first.citations,
      cautions: first.cautions,
    }),
  ];
}

function present(good: readonly Seen[]): readonly Finding[] {
  const [first, second] = good;
  if (!first) return [];
  return [
    observed(text, {
      verdict: 'pass',
      subject: second ? `${first.subject} and ${second.subject}` : first.subject,
      path: first.path,
      reason: say`The plan shows ${first.words}${second ? say` and ${second.words}` : ''}.`,
      sources: [...new Set(good.flatMap(({ citations }) => citations))],
      cautions: [...new Set(good.flatMap(({ cautions }) => cautions))],
    }),
  ];
}
