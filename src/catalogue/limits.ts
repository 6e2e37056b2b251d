import type { Citation } from './citation.ts';
import type { Codes } from './codes.ts';
import {
  axleLimitsSumRule,
  loadSideGuide,
  minimumPayMassRule,
  occupantCapacityRule,
  reweighingRule,
  runningOrderTolerance,
  steeredAxleShareRule,
  vanConverterGuide,
} from './sources.ts';

export const limitIds = [
  'steered-axle-share',
  'steered-axle-share-towing',
  'axle-limits-sum',
  'heavier-wheel-share',
  'side-difference',
  'equipment-centre-foremost',
  'equipment-centre-rearmost',
  'static-stability-factor',
  'minimum-pay-mass',
  'base-mass-tolerance',
  'reweigh-change',
] as const;
export type LimitId = (typeof limitIds)[number];

/**
 * What stands behind a limit. Only `law` can make a check fail; the others can warn. Even `law` here is type-approval
 * law for the finished vehicle, which reaches a conversion when it is inspected or approved.
 */
export type Force = 'law' | 'published guide' | 'common practice' | 'own choice';

export interface RegionalLimit {
  readonly id: LimitId;
  readonly codes: readonly Codes[];
  /** A plain ratio, except `minimum-pay-mass`: see `of`. */
  readonly value: number;
  /** What the value is a share or a number of, in words. */
  readonly of: string;
  readonly sense: 'at most' | 'at least';
  readonly force: Force;
  readonly citations: readonly Citation[];
  readonly caution?: string;
}

type Rule = Omit<RegionalLimit, 'codes' | 'force' | 'caution'>;

const everywhere: readonly Codes[] = ['uk', 'eu', 'us', 'au'];

const elsewhere =
  "This figure is a European type-approval rule. It is not a rule of the plan's region, so it can only warn; ask the local authority.";

/** A European rule: law in the EU and in Great Britain, no more than a guide anywhere else. */
const european = (rule: Rule, cautionAtHome?: string): readonly RegionalLimit[] => [
  {
    ...rule,
    codes: ['uk', 'eu'],
    force: 'law',
    ...(cautionAtHome === undefined ? {} : { caution: cautionAtHome }),
  },
  { ...rule, codes: ['us', 'au'], force: 'published guide', caution: elsewhere },
];

const guide = (rule: Rule, caution: string): RegionalLimit => ({
  ...rule,
  codes: everywhere,
  force: 'published guide',
  caution,
});

const ownGuideFirst = "A maker's guide for another vehicle. The guide of the base van comes first.";

const payMass: Rule = {
  id: 'minimum-pay-mass',
  value: 10,
  of: 'kg for each person aboard, the driver included, and for each metre of overall length',
  sense: 'at least',
  citations: [minimumPayMassRule],
};

export const regionalLimits: readonly RegionalLimit[] = [
  ...european(
    {
      id: 'steered-axle-share',
      value: 0.3,
      of: 'the permissible maximum mass, carried by the front axle while the rear axle is at its limit',
      sense: 'at least',
      citations: [steeredAxleShareRule],
    },
    'The share is of the permissible maximum mass, not of what the van weighs. A type-approval rule; the inspecting authority decides how it applies to a conversion.',
  ),
  ...european(
    {
      id: 'steered-axle-share-towing',
      value: 0.2,
      of: 'the permissible maximum mass, carried by the front axle with the coupling at its maximum load',
      sense: 'at least',
      citations: [steeredAxleShareRule],
    },
    'For towing only. A type-approval rule; the inspecting authority decides how it applies to a conversion.',
  ),
  ...european({
    id: 'axle-limits-sum',
    value: 1,
    of: 'the permissible maximum mass, as the sum of the axle limits',
    sense: 'at least',
    citations: [axleLimitsSumRule, vanConverterGuide],
  }),
  guide(
    {
      id: 'heavier-wheel-share',
      value: 0.52,
      of: 'the load of its axle, on the heavier wheel',
      sense: 'at most',
      citations: [loadSideGuide],
    },
    `${ownGuideFirst} The load rating of the tyre still applies.`,
  ),
  guide(
    {
      id: 'side-difference',
      value: 0.04,
      of: 'the total mass, as the difference between the left side and the right',
      sense: 'at most',
      citations: [vanConverterGuide, loadSideGuide],
    },
    ownGuideFirst,
  ),
  guide(
    {
      id: 'equipment-centre-foremost',
      value: 0,
      of: 'the wheelbase, measured back from the front axle to the centre of the added equipment',
      sense: 'at least',
      citations: [vanConverterGuide],
    },
    ownGuideFirst,
  ),
  guide(
    {
      id: 'equipment-centre-rearmost',
      value: 1,
      of: 'the wheelbase, measured back from the front axle to the centre of the added equipment',
      sense: 'at most',
      citations: [vanConverterGuide],
    },
    ownGuideFirst,
  ),
  guide(
    {
      id: 'static-stability-factor',
      value: 1.04,
      of: 'half the track over the height of the centre of gravity',
      sense: 'at least',
      citations: [
        {
          title:
            'US NHTSA rollover ratings of 2001 to 2003: a stability factor of 1.03 and less gets the lowest rating, one star',
          provenance: 'memory',
          caution: 'The figure was not found in a page that could be read.',
        },
        {
          title:
            'US NHTSA, interpreting rollover ratings: one star means a risk of rollover above 40 % in a single-vehicle crash',
          readAt:
            'https://webarchive.library.unt.edu/eot2008/20081230030615/http://www.safercar.gov/vgn-ext-templating/v/index.jsp?vgnextoid=c688e66aeee35110VgnVCM1000002fd17898RCRD',
          provenance: 'read',
        },
        {
          title:
            "US NHTSA, rollover rule-making, chapter V 'Why choose SSF?', section A (definition of the factor)",
          readAt: 'http://www.nhtsa.dot.gov/cars/rules/rulings/Rollover/Chapt05.html',
          provenance: 'read',
        },
      ],
    },
    'A rating of new light vehicles, used as a yardstick; no law sets a limit. Springs and tyres give way, so a real van tips earlier than a rigid one.',
  ),
  // The US and Australia have figures of their own for this, so their guide rows differ.
  {
    ...payMass,
    codes: ['uk', 'eu'],
    force: 'law',
    caution: 'A legal floor, far below what living in a van needs.',
  },
  {
    ...payMass,
    codes: ['us'],
    force: 'published guide',
    citations: [minimumPayMassRule, occupantCapacityRule],
    caution: `${elsewhere} The US label rule counts 68 kg for each belted seat against the carrying capacity instead.`,
  },
  {
    ...payMass,
    codes: ['au'],
    force: 'published guide',
    citations: [
      minimumPayMassRule,
      {
        title:
          'A guide to Australian vehicle rules (August 2017): personal effects of 60 kg for each of the first two berths, 20 kg for each further one',
        readAt: 'http://caravanandmotorhomebooks.com/australian-rv-rules-and-regulations/',
        provenance: 'read',
        caution: 'A secondary page; the Australian Design Rule itself was not read.',
      },
    ],
    caution: `${elsewhere} A secondary page has the Australian figure higher for few berths: 60 kg for each of the first two and 20 kg for each further one.`,
  },
  ...european(
    {
      id: 'base-mass-tolerance',
      value: 0.05,
      of: "the declared mass in running order, up or down, that one vehicle's mass may differ by",
      sense: 'at most',
      citations: [runningOrderTolerance],
    },
    'For special purpose vehicles; other vehicles have 3 %. The wider is used for a mass from a brochure. Only a weighbridge tells.',
  ),
  {
    id: 'reweigh-change',
    codes: everywhere,
    value: 0.005,
    of: 'the permissible maximum mass, as the sum of the changes since the last weighing',
    sense: 'at most',
    force: 'own choice',
    citations: [
      reweighingRule,
      {
        ...occupantCapacityRule,
        title:
          'US NHTSA final rule, 72 FR 68442 (4 December 2007): added mass above the lesser of 1.5 % of the gross rating or 45 kg must be declared',
        caution: 'A duty of sellers in the US; looser than the value used.',
      },
    ],
    caution: 'A rule for aircraft, borrowed: no road law asks for it.',
  },
];

/**
 * The limit that applies under these codes.
 *
 * @throws Error when the table has no row for the pair, which would be a defect of the table.
 */
export function limitFor(id: LimitId, region: Codes): RegionalLimit {
  const row = regionalLimits.find((limit) => limit.id === id && limit.codes.includes(region));
  if (row === undefined) throw new Error(`The table of limits has no row "${id}" for "${region}".`);
  return row;
}
