import type { Air } from '../../build/air.ts';
import { fanKeys, fanned, type KnownFan, knownFans } from '../../build/fanned.ts';
import type { Flame } from '../../build/flames.ts';
import { fanFlowM3S } from '../../calc/air/fans.ts';
import { orificeAreaM2 } from '../../calc/air/orifice.ts';
import { depressionOpenFlueTests } from '../../catalogue/air/sources.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { freeArea, pressure } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { airLimit, flames } from '../air-facts.ts';
import { airCaution, combustionCaution, gasCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { depressionStep, fansStep, openStep } from '../working/fans.ts';

const text: RuleText = {
  id: 'air.flue-draught',
  topic: 'air',
  title: 'fans beside an open flue',
  why: 'A fan that blows out pulls the fumes of an open flue back down into the room, and with them carbon monoxide.',
  formula:
    'd ≤ d_limit with all exhaust fans on and intakes off; Σ Q_exhaust(d) = C_d · A · √(2 · d / ρ), Pa, m³/s, m²',
  sources: [depressionOpenFlueTests],
  cautions: [combustionCaution, gasCaution, airCaution],
  fix: 'Let no fan run while an open flue burns, or take a room-sealed appliance.',
  lifeSafety: true,
  limits: ['room-depression'],
  place: ['air', 'fans'],
};

interface Drawn {
  readonly air?: Air;
  readonly open: readonly Flame[];
  /** Their plan does not say how they get rid of their fumes. */
  readonly unsaid: readonly Flame[];
}

const drawn: Need<Drawn> = (build) => {
  const found = flames(build);
  if (!found.ok) return found;
  const open = found.value.filter(({ flue }) => flue === 'open-flued');
  const unsaid = found.value.filter(({ flue }) => flue === undefined);
  const keys = [
    ...unsaid.map(({ path }) => `${path.join('.')}.flue`),
    ...(open.length === 0
      ? []
      : build.air
        ? build.air.fans.filter(({ blows }) => blows !== 'intake').flatMap(fanKeys)
        : ['air.vents', 'air.fans']),
  ];
  if (keys.length > 0) return missing(...new Set(keys));
  return { ok: true, value: { open, unsaid, ...(build.air && { air: build.air }) } };
};

export default defineRule({
  ...text,
  needs: { drawn },
  check: ({ facts }) => ({ findings: [findingFor(facts.drawn)] }),
  work: ({ facts }) => {
    const { air } = facts.drawn;
    const exhausts = exhaustsOf(air);
    if (!air || exhausts.length === 0) return undefined;
    const together = fanned(air, exhausts);
    return [openStep(together.openings), fansStep(exhausts, together), depressionStep(together)];
  },
});

const exhaustsOf = (air: Air | undefined): readonly KnownFan[] =>
  air ? knownFans(air).filter(({ blows }) => blows === 'exhaust') : [];

function findingFor({ air, open }: Drawn): Finding {
  const exhausts = exhaustsOf(air);
  const names = namesOf(open.map(({ name }) => name));
  const [first] = open;
  if (!air || !first || exhausts.length === 0)
    return observed(text, {
      verdict: 'pass',
      subject: first?.name ?? 'open flues',
      path: first?.path ?? text.place,
      reason: first
        ? say`The plan shows no fan that blows out beside the open flue of ${names}.`
        : say`The plan shows nothing with an open flue.`,
    });
  const row = airLimit('room-depression');
  const { depressionPa, openM2 } = fanned(air, exhausts);
  return judge({
    rule: text,
    subject: first.name,
    path: first.path,
    kind: 'pressure',
    measured: { value: depressionPa, standard: 0 },
    limit: row.value,
    sense: 'at most',
    broken: 'fail',
    reason: say`${namesOf(exhausts.map(({ fan }) => fan.name))} ${exhausts.length === 1 ? 'pulls' : 'pull'} the room ${pressure(depressionPa)} below the outside with ${freeArea(openM2)} of other vents open, beside the open flue of ${names}; more than ${pressure(row.value)} pull its fumes into the room.`,
    remedy: () => {
      const flowM3PerS = exhausts.reduce((sum, { curve }) => sum + fanFlowM3S(curve, row.value), 0);
      return say`Take a room-sealed appliance instead, or blow in instead of out, or let ${freeArea(orificeAreaM2(flowM3PerS, row.value) - openM2)} more in that nobody can shut; a gas engineer tests for spillage with the fans on.`;
    },
    sources: row.citations,
    cautions: row.cautions,
  });
}
