import type { Build } from '../../build/build.ts';
import type { EnvelopeSurface, Heat } from '../../build/heat.ts';
import type { WorkedHeatDemand } from '../../build/heat-demand.ts';
import { paneUValue } from '../../build/heat-demand.ts';
import {
  coolingAirM3PerS,
  overheatedC,
  type SunlitPane,
  type SunlitSkin,
  solAirC,
  solarGainW,
} from '../../calc/heat/summer.ts';
import { heatOfPerson } from '../../catalogue/air/people-heat.ts';
import {
  absorptanceCitations,
  absorptances,
  paneSolarCitations,
  paneSolarShares,
  roofSkyLossK,
  skyLossCitation,
  summerRiseCitation,
  summerRiseK,
  summerSunCitation,
  summerSunWM2,
  usualColour,
  usualFanCitation,
  usualFanShare,
} from '../../catalogue/heat/sun.ts';
import { outsideFilmM2KPerW } from '../../catalogue/heat/surface-films.ts';
import { judge } from '../../engine/judge.ts';
import { airFlow, kelvins, power, share, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type Need, type RuleText } from '../../engine/rule.ts';
import { warmthCaution } from '../cautions.ts';
import { optional } from '../needs.ts';
import { demand, heat } from '../warmth.ts';

const text: RuleText = {
  id: 'heat.summer',
  topic: 'heat',
  title: 'hot afternoons',
  why: 'A van in the sun gets far hotter than the air about it; nights in it are bad, and children, the old and animals are in danger.',
  formula:
    'V = (G / ΔT − H) / 1200; G = Σ g·A·I + Σ U·A·(α·I·R_se − ΔT_sky) + people in W, H Σ U·A in W/K, ΔT allowed rise over the air outside in K, V m³/s of air',
  sources: [
    summerSunCitation,
    ...absorptanceCitations,
    skyLossCitation,
    ...paneSolarCitations,
    summerRiseCitation,
    usualFanCitation,
  ],
  cautions: [
    warmthCaution,
    'Never leave children, animals or people who cannot help themselves in a van in the sun, whatever ventilation it has.',
  ],
  fix: 'Move more air through on hot days, shade the panes, or park in the shade.',
  place: ['living', 'summer_high'],
};

const summerHigh: Need<number> = optional('living.summer_high', ({ habits }) => habits.summerHighC);

const secondsAnHour = 3600;

export default defineRule({
  ...text,
  needs: { heat, demand, outsideC: summerHigh },
  check: ({ build, facts: { heat, demand, outsideC } }) => {
    const people = (build.habits.people ?? 0) * heatOfPerson('seated at rest', outsideC).sensibleW;
    const sunW = Math.max(0, greatestSunW(heat, demand, outsideC));
    const gainsW = sunW + people;
    const { transmissionWPerK } = demand.awake;
    const leaksM3PerS = (demand.airChangesPerHour * demand.volumeM3) / secondsAnHour;
    const fanM3PerS = usualFanShare * freeFlowOfFans(build);
    const stillC = overheatedC({ outsideC, gainsW, transmissionWPerK, airM3PerS: leaksM3PerS });
    const neededM3PerS = coolingAirM3PerS({ gainsW, transmissionWPerK, riseK: summerRiseK });
    const fans: Phrase =
      fanM3PerS > 0
        ? say` The fans are counted with ${share(usualFanShare)} of what they blow freely, ${airFlow(fanM3PerS)}.`
        : say` The plan has no fan whose flow is known.`;
    return {
      findings: [
        {
          ...judge({
            rule: text,
            subject: 'living space',
            path: ['living', 'summer_high'],
            kind: 'air flow',
            measured: { value: leaksM3PerS + fanM3PerS, standard: 0 },
            limit: neededM3PerS,
            sense: 'at least',
            broken: 'warn',
            reason: say`At ${temperatureC(outsideC)} in the sun ${power(sunW)} come in through roof, side and panes, and people add ${power(people)}. Shut, the van gets to ${temperatureC(stillC)} in the end. It takes ${airFlow(neededM3PerS)} of air from outside to stay within ${kelvins(summerRiseK)} of it.${fans}`,
            remedy: (shortfall) =>
              say`Plan a fan and openings that really move ${airFlow(shortfall)} more (printed for about ${airFlow(shortfall / usualFanShare)}), or shade the van and cover its panes on the outside.`,
          }),
          assumptions: [
            ...demand.assumptions,
            `the paint is ${usualColour}, and the sun stands on the side with the most glass`,
          ],
        },
      ],
    };
  },
});

/** Exhaust and supply of the same air are one flow: the larger side counts. */
function freeFlowOfFans({ air }: Build): number {
  const flows = (air?.fans ?? []).filter(({ serves }) => serves === undefined);
  const sumOf = (wanted: 'exhaust' | 'intake'): number =>
    flows
      .filter(({ blows }) => (blows ?? 'exhaust') === wanted)
      .reduce((sum, { openFlowM3PerS }) => sum + (openFlowM3PerS ?? 0), 0);
  return Math.max(sumOf('exhaust'), sumOf('intake'));
}

const sides: readonly EnvelopeSurface[] = ['left wall', 'right wall', 'rear doors'];

/** The sun stands on the roof and on one side: on that which lets the most in. */
function greatestSunW(heat: Heat, demand: WorkedHeatDemand, outsideC: number): number {
  const sunOn = (surface: EnvelopeSurface): number => sunThrough(surface, heat, demand, outsideC);
  return sunOn('ceiling') + Math.max(...sides.map(sunOn));
}

function sunThrough(
  surface: EnvelopeSurface,
  heat: Heat,
  demand: WorkedHeatDemand,
  outsideC: number,
): number {
  const isRoof = surface === 'ceiling';
  const sunWM2 = isRoof ? summerSunWM2.roof : summerSunWM2.wall;
  const skins = demand.surfaces
    .filter(({ part }) => part.surface === surface)
    .map(
      ({ part, uValue }): SunlitSkin => ({
        areaM2: part.areaM2,
        uValue,
        solAirC: solAirC({
          outsideC,
          absorptance: absorptances[usualColour],
          sunWM2,
          outsideM2KPerW: outsideFilmM2KPerW,
          skyLossK: isRoof ? roofSkyLossK : 0,
        }),
      }),
    );
  const panes = heat.panes
    .filter((pane) => pane.surface === surface && paneUValue(pane) !== undefined)
    .map(
      ({ areaM2, kind }): SunlitPane => ({
        areaM2,
        solarShare: paneSolarShares[kind ?? 'single glass'],
        sunWM2,
      }),
    );
  return solarGainW({ outsideC, panes, skins });
}
