import type { Build } from '../../build/build.ts';
import type { Heater } from '../../build/heat.ts';
import { gasRequirementFor } from '../../catalogue/gas/requirements.ts';
import type { Finding } from '../../engine/finding.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, gasCaution, heatCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { burnsFuel } from '../warmth.ts';

const text: RuleText = {
  id: 'heat.heater-flue',
  topic: 'heat',
  title: 'where the heater’s fumes go',
  why: 'A heater without a flue gives its fumes to those who sleep beside it: carbon monoxide kills without a smell.',
  formula:
    'a heater that burns gas or diesel is room-sealed: its air comes from outside and its fumes go outside',
  sources: [],
  cautions: [combustionCaution, gasCaution, heatCaution],
  fix: 'Take a heater that is room-sealed.',
  lifeSafety: true,
  place: ['heat', 'heater', 'flue'],
};

interface Burning {
  readonly heater: Heater;
  readonly flue: NonNullable<Heater['flue']>;
}

/** Undefined: it burns nothing, so there are no fumes. */
const burning: Need<Burning | 'nothing'> = ({ heat }: Build) => {
  const heater = heat?.heater;
  if (!heater) return missing('heat.heater');
  const { heatedBy, flue } = heater;
  if (heatedBy !== undefined && !burnsFuel(heater)) return given('nothing');
  return heatedBy !== undefined && flue !== undefined
    ? given({ heater, flue })
    : missing(
        ...(heatedBy === undefined ? ['heat.heater.heated_by'] : []),
        ...(flue === undefined ? ['heat.heater.flue'] : []),
      );
};

export default defineRule({
  ...text,
  needs: { burning },
  check: ({ build, facts: { burning } }) => ({
    findings: burning === 'nothing' ? [] : [findingOf(burning, build)],
  }),
});

function findingOf({ heater, flue }: Burning, build: Build): Finding {
  const { citations, cautions } = gasRequirementFor('flueless-heater', build.codes);
  const subject = heater.thing ?? 'heater';
  const shared = { subject, path: ['heat', 'heater', 'flue'], sources: citations, cautions };
  if (flue === 'room-sealed')
    return observed(text, {
      ...shared,
      verdict: 'pass',
      reason: say`The plan has the ${subject} as room-sealed: its air and its fumes are kept apart from the living space. Whether its pipes are tight the plan cannot show.`,
    });
  if (flue === 'flueless')
    return observed(text, {
      ...shared,
      verdict: 'fail',
      reason: say`The ${subject} has no flue: its fumes, carbon monoxide and all its water go into the air that people sleep in. Codes refuse that in a space where people sleep.`,
      remedy: say`Take 1 room-sealed heater with a flue through the floor or the wall in its place.`,
    });
  return observed(text, {
    ...shared,
    verdict: 'warn',
    reason: say`The ${subject} has an open flue: it takes its air from the living space, and a fan or wind can draw its fumes back in. In vehicles a room heater is room-sealed.`,
    remedy: say`Take 1 room-sealed heater in its place, or keep the fixed openings for its air open and never run a fan that blows out beside it.`,
  });
}
