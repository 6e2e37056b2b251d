import { type Body, isPlaced, type PlacedBody } from '../../build/body.ts';
import type { Build, Ticket } from '../../build/build.ts';
import { errorsOf } from '../../build/errors.ts';
import { evaluate } from '../../build/functional.ts';
import { frontAxle, rearAxle, totalMass } from '../../build/quantities.ts';
import { expandedUncertainty, rootSumSquare } from '../../calc/uncertainty.ts';
import { uncertaintyMethod } from '../../catalogue/methods.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, sourceInWords } from '../../engine/judge.ts';
import { mass, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import type { Quantity } from '../../plan/quantity.ts';
import { vehicleLawCaution } from '../cautions.ts';
import { maxMass, unladen } from '../needs.ts';
import { greatest } from '../states.ts';
import { axleStep } from '../working/axle.ts';
import { massOfEverything } from '../working/parts.ts';

const text: RuleText = {
  id: 'mass.weighbridge',
  topic: 'mass',
  title: 'plan against the scale',
  why: 'A plan that disagrees with the scale has forgotten something, and the scale is right.',
  formula:
    '|weighed − computed| ≤ max(U, 0.5 % of M_max); U = 2·√(u_computed² + u_weighed²), computed in the state of the ticket',
  sources: [uncertaintyMethod],
  cautions: [vehicleLawCaution],
  fix: 'Look for what the plan has forgotten, and correct the masses until plan and scale agree.',
  limits: ['reweigh-change'],
  place: ['van'],
};

const tickets: Need<readonly Ticket[]> = ({ tickets: all }) =>
  all.length > 0 ? given(all) : missing('weighed');

export default defineRule({
  ...text,
  needs: { tickets, unladen, maxMass },
  check: ({ build, facts, limit }) => {
    const least = limit('reweigh-change');
    const leastKg = least.value * facts.maxMass.value;
    return {
      findings: facts.tickets.map((ticket): Finding => {
        const comparisons = compare(build, ticket);
        const worst = worstOf(comparisons, leastKg);
        const allowedKg = Math.max(worst.tolerance, leastKg);
        const differenceKg = worst.weighedKg - worst.computedKg;
        const agrees = !exceeds(Math.abs(differenceKg), allowedKg);
        const total = comparisons[0] ?? worst;
        const heaviest = greatest(build, build.bodies, totalMass).value;
        const leftKg = facts.maxMass.value - heaviest - (total.weighedKg - total.computedKg);
        return {
          rule: text.id,
          topic: text.topic,
          title: text.title,
          verdict: agrees ? 'pass' : 'warn',
          subject: subjectOf(ticket, worst),
          path: ticket.path,
          measured: mass(Math.abs(differenceKg)),
          limit: { measure: mass(allowedKg), sense: 'at most' },
          margin: mass(allowedKg - Math.abs(differenceKg)),
          reason: say`On ${ticket.date} the scale showed ${mass(worst.weighedKg)} (${worst.what}), ${difference(differenceKg)} the plan's ${mass(worst.computedKg)} for that state. Counted from the scale, the payload left is ${mass(leftKg)}.`,
          ...(!agrees && { remedy: remedyOf(differenceKg, worst.dominant) }),
          sources: [...text.sources, ...least.citations],
          cautions: [...text.cautions],
        };
      }),
    };
  },
  work: ({ build, facts, limit }, finding) => {
    const least = limit('reweigh-change').value;
    const leastKg = least * facts.maxMass.value;
    const compared = facts.tickets.map((ticket) => {
      const comparisons = compare(build, ticket);
      return { ticket, comparisons, worst: worstOf(comparisons, leastKg) };
    });
    const found = compared.find(({ ticket, worst }) => subjectOf(ticket, worst) === finding.subject);
    if (!found) return undefined;
    const { ticket, comparisons, worst } = found;
    return [
      worst.computed(),
      {
        what: 'What plan and scale may be apart by their tolerances: U = 2·√(u_computed² + u_weighed²)',
        sum: say`2 · √((${mass(worst.computedStandardKg)})² + (${mass(worst.scaleStandardKg)})²); a stated ± counts as u = ± / √3`,
        result: mass(worst.tolerance),
        paths: weighedPaths(ticket, worst.what),
      },
      {
        what: 'What they may be apart: the larger of U and a small part of M_max',
        sum: say`the larger of ${mass(worst.tolerance)} and ${share(least)} · ${mass(facts.maxMass.value)} = ${mass(leastKg)}`,
        result: mass(Math.max(worst.tolerance, leastKg)),
        paths: [['van', 'max_mass']],
      },
      {
        what: `How far they are apart (${worst.what}${comparisons.length > 1 ? `, the worst of ${comparisons.length} that the ticket has` : ''}): |weighed − computed|`,
        sum: say`|${mass(worst.weighedKg)} − ${mass(worst.computedKg)}|`,
        result: mass(Math.abs(worst.weighedKg - worst.computedKg)),
        paths: weighedPaths(ticket, worst.what),
      },
    ];
  },
});

const subjectOf = (ticket: Ticket, { what }: Comparison): string => `ticket ${ticket.name}, ${what}`;

/** Where the ticket says it: a total may be typed as one or as two axles. */
const weighedPaths = ({ path }: Ticket, what: Comparison['what']): NonNullable<Step['paths']> =>
  what === 'total'
    ? [
        [...path, 'total'],
        [...path, 'front'],
        [...path, 'rear'],
      ]
    : [[...path, what === 'front axle' ? 'front' : 'rear']];

interface Comparison {
  readonly what: 'total' | 'front axle' | 'rear axle';
  readonly weighedKg: number;
  readonly computedKg: number;
  readonly computedStandardKg: number;
  readonly scaleStandardKg: number;
  readonly tolerance: number;
  /** The step that shows how the plan's own figure came about. */
  readonly computed: () => Step;
  readonly dominant?: string;
}

const excess = ({ weighedKg, computedKg, tolerance }: Comparison, leastKg: number): number =>
  Math.abs(weighedKg - computedKg) / Math.max(tolerance, leastKg);

const worstOf = (comparisons: readonly [Comparison, ...Comparison[]], leastKg: number): Comparison =>
  comparisons.reduce((a, b) => (excess(b, leastKg) > excess(a, leastKg) ? b : a));

/** The total, and the axles where the ticket has them and every mass has its place. */
function compare(build: Build, ticket: Ticket): readonly [Comparison, ...Comparison[]] {
  const bodies = build.bodies.filter((body) => !ticket.absent.has(body.label));
  const placed = bodies.filter(isPlaced);
  const { filling } = ticket;
  const total = comparison('total', ticket.total, evaluate(bodies, totalMass, filling), () =>
    massOf(bodies, ticket),
  );
  const { wheelbaseM } = build.vehicle;
  if (!ticket.front || !ticket.rear || wheelbaseM === undefined || placed.length < bodies.length)
    return [total];
  return [
    total,
    comparison('front axle', ticket.front, evaluate(placed, frontAxle(wheelbaseM), filling), () =>
      onAxle('front', wheelbaseM, placed, ticket),
    ),
    comparison('rear axle', ticket.rear, evaluate(placed, rearAxle(wheelbaseM), filling), () =>
      onAxle('rear', wheelbaseM, placed, ticket),
    ),
  ];
}

const asWeighed = 'as the van was weighed';

const massOf = (bodies: readonly Body[], { filling }: Ticket): Step =>
  massOfEverything(bodies, filling, `What the plan has aboard, ${asWeighed}: M = Σ m`);

function onAxle(
  axle: 'front' | 'rear',
  wheelbaseM: number,
  bodies: readonly PlacedBody[],
  { filling }: Ticket,
): Step {
  const step = axleStep(axle, wheelbaseM, bodies, filling);
  return { ...step, what: `${step.what}, ${asWeighed}` };
}

function comparison(
  what: Comparison['what'],
  weighed: Quantity,
  { value, standard, dominant }: ReturnType<typeof evaluate>,
  computed: Comparison['computed'],
): Comparison {
  const onScale = errorsOf(weighed, 'weighed').map((term) => term.standard);
  const scaleStandardKg = rootSumSquare(onScale);
  const tolerance = expandedUncertainty(rootSumSquare([standard, ...onScale]));
  return {
    what,
    weighedKg: weighed.value,
    computedKg: value,
    computedStandardKg: standard,
    scaleStandardKg,
    tolerance,
    computed,
    ...(dominant !== undefined && { dominant }),
  };
}

const difference = (kg: number): Phrase =>
  kg >= 0 ? say`${mass(kg)} more than` : say`${mass(-kg)} less than`;

function remedyOf(differenceKg: number, dominant: string | undefined): Phrase {
  const look =
    differenceKg > 0
      ? 'Look for what is in the van and not in the plan'
      : 'Look for what is in the plan and was not in the van';
  const doubt = dominant === undefined ? '' : `, and at ${sourceInWords(dominant)}`;
  return say`${look}: ${mass(Math.abs(differenceKg))}${doubt}. Until it is found, trust the scale.`;
}
