import { isPlaced } from '../../build/body.ts';
import type { Build, Ticket } from '../../build/build.ts';
import { errorsOf } from '../../build/errors.ts';
import { evaluate } from '../../build/functional.ts';
import { frontAxle, rearAxle, totalMass } from '../../build/quantities.ts';
import { expandedUncertainty, rootSumSquare } from '../../calc/uncertainty.ts';
import { uncertaintyMethod } from '../../catalogue/methods.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, sourceInWords } from '../../engine/judge.ts';
import { mass } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import type { Quantity } from '../../plan/quantity.ts';
import { vehicleLawCaution } from '../cautions.ts';
import { maxMass, unladen } from '../needs.ts';
import { greatest } from '../states.ts';

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
        const worst = comparisons.reduce((a, b) => (excess(b, leastKg) > excess(a, leastKg) ? b : a));
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
          subject: `ticket ${ticket.name}, ${worst.what}`,
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
});

interface Comparison {
  readonly what: string;
  readonly weighedKg: number;
  readonly computedKg: number;
  readonly tolerance: number;
  readonly dominant?: string;
}

const excess = ({ weighedKg, computedKg, tolerance }: Comparison, leastKg: number): number =>
  Math.abs(weighedKg - computedKg) / Math.max(tolerance, leastKg);

/** The total, and the axles where the ticket has them and every mass has its place. */
function compare(build: Build, ticket: Ticket): readonly [Comparison, ...Comparison[]] {
  const bodies = build.bodies.filter((body) => !ticket.absent.has(body.label));
  const placed = bodies.filter(isPlaced);
  const total = comparison('total', ticket.total, evaluate(bodies, totalMass, ticket.filling));
  const { wheelbaseM } = build.vehicle;
  if (!ticket.front || !ticket.rear || wheelbaseM === undefined || placed.length < bodies.length)
    return [total];
  return [
    total,
    comparison('front axle', ticket.front, evaluate(placed, frontAxle(wheelbaseM), ticket.filling)),
    comparison('rear axle', ticket.rear, evaluate(placed, rearAxle(wheelbaseM), ticket.filling)),
  ];
}

function comparison(what: string, weighed: Quantity, computed: ReturnType<typeof evaluate>): Comparison {
  const { value, standard, dominant } = computed;
  const onScale = errorsOf(weighed, 'weighed').map((term) => term.standard);
  const tolerance = expandedUncertainty(rootSumSquare([standard, ...onScale]));
  return {
    what,
    weighedKg: weighed.value,
    computedKg: value,
    tolerance,
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
