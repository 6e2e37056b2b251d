import type { Citation } from './citation.ts';
import type { Codes } from './codes.ts';
import {
  commercialVehicleGroups,
  drivingLicenceRegulationsGb,
  licenceBefore1997,
  licenceClassesAu,
  licenceDirective2006,
  licenceDirective2025,
} from './sources.ts';

/** What drives the van: `zero emission` for battery or hydrogen, `any` for everything else. */
export type LicenceEnergy = 'any' | 'zero emission';

/**
 * A class of driving licence and the heaviest van it covers. What counts is the permissible maximum mass on the
 * van's plate, in kg, not what the van weighs; the maximum is inclusive: category B ends AT 3500 kg.
 */
export interface LicenceClass {
  readonly codes: Codes;
  readonly category: string;
  /** Absent when the class has no upper limit. */
  readonly maxMassKg?: number;
  /** `any` covers every van, `zero emission` only those. */
  readonly energy: LicenceEnergy;
  /** First day the rule is in force, ISO date. */
  readonly from?: string;
  /** Held only by drivers whose car test was passed before this day, ISO date. */
  readonly testPassedBefore?: string;
  /** Takes a test or training beyond the ordinary car test. */
  readonly needsTraining: boolean;
  readonly note: string;
  readonly citations: readonly Citation[];
}

/** What to keep in mind wherever a licence is checked. */
export const licenceCautions: Readonly<Record<Codes, readonly string[]>> = {
  uk: [
    'The table is the law of Great Britain. Northern Ireland has its own; the zero-emission rule was not checked there.',
    'Look at the categories on the licence itself; age, health and renewals can take one away.',
  ],
  eu: [
    'Directive (EU) 2025/2205 will let member states allow motor caravans up to 4250 kg on category B, for vehicles that run on petrol or diesel only after training or a test. It is not transposed yet and each state decides, so it is not counted here.',
    'An older national licence may cover more; look at the categories on the licence itself.',
  ],
  us: ['Licence classes are state law. Some states ask for a special class for a heavy or long motor home.'],
  au: ['States share the classes but not every condition; ask the road authority of the state.'],
};

const zeroEmissionGb: Citation = {
  title:
    'Motor Vehicles (Driving Licences) (Amendment) (No. 2) Regulations 2025 (SI 2025/608), in force 10 June 2025; summary of the debate for the 4.25 tonne figure',
  readAt:
    'https://legislation.glitch.me/uksi/2025/608/made ; https://hansard.digital/days/2025-04-02/sessions/802',
  provenance: 'read',
  caution:
    'The instrument was read in part; the figure in the summary. Extends to England, Wales and Scotland.',
};

/** Within each region lightest first, and of two with the same limit the one that needs no further test first. */
export const licenceClasses: readonly LicenceClass[] = [
  {
    codes: 'uk',
    category: 'B',
    maxMassKg: 3500,
    energy: 'any',
    needsTraining: false,
    note: 'the ordinary car licence, up to 3500 kg and 8 passengers',
    citations: [drivingLicenceRegulationsGb],
  },
  {
    codes: 'uk',
    category: 'B',
    maxMassKg: 4250,
    energy: 'zero emission',
    from: '2025-06-10',
    needsTraining: false,
    note: 'the ordinary car licence, for battery and hydrogen vehicles up to 4250 kg',
    citations: [zeroEmissionGb],
  },
  {
    codes: 'uk',
    category: 'C1',
    maxMassKg: 7500,
    energy: 'any',
    testPassedBefore: '1997-01-01',
    needsTraining: false,
    note: 'included in a car licence from a test passed before 1 January 1997, up to 7500 kg',
    citations: [licenceBefore1997, drivingLicenceRegulationsGb],
  },
  {
    codes: 'uk',
    category: 'C1',
    maxMassKg: 7500,
    energy: 'any',
    needsTraining: true,
    note: 'a separate test, above 3500 kg and up to 7500 kg',
    citations: [drivingLicenceRegulationsGb],
  },
  {
    codes: 'uk',
    category: 'C',
    energy: 'any',
    needsTraining: true,
    note: 'a separate lorry test, above 3500 kg without an upper limit',
    citations: [drivingLicenceRegulationsGb],
  },
  {
    codes: 'eu',
    category: 'B',
    maxMassKg: 3500,
    energy: 'any',
    needsTraining: false,
    note: 'the ordinary car licence, up to 3500 kg and 8 passengers',
    citations: [licenceDirective2006, licenceDirective2025],
  },
  {
    codes: 'eu',
    category: 'C1',
    maxMassKg: 7500,
    energy: 'any',
    needsTraining: true,
    note: 'a separate test, above 3500 kg and up to 7500 kg',
    citations: [licenceDirective2006],
  },
  {
    codes: 'eu',
    category: 'C',
    energy: 'any',
    needsTraining: true,
    note: 'a separate lorry test, above 3500 kg without an upper limit',
    citations: [licenceDirective2006],
  },
  {
    codes: 'us',
    category: 'ordinary licence',
    // 26,000 lb is 11,793.4 kg; the federal group begins at 26,001 lb, given there as 11,794 kg.
    maxMassKg: 11793,
    energy: 'any',
    needsTraining: false,
    note: 'no federal class for a private vehicle below 26,001 lb; states may ask for more',
    citations: [commercialVehicleGroups],
  },
  {
    codes: 'us',
    category: "a state's heavy class",
    energy: 'any',
    needsTraining: true,
    note: 'from 26,001 lb many states ask for a class of their own, even for a private motor home',
    citations: [commercialVehicleGroups],
  },
  {
    codes: 'au',
    category: 'C',
    maxMassKg: 4500,
    energy: 'any',
    needsTraining: false,
    note: 'the ordinary car licence, up to 4500 kg and 12 seats with the driver',
    citations: [licenceClassesAu],
  },
  {
    codes: 'au',
    category: 'LR',
    maxMassKg: 8000,
    energy: 'any',
    needsTraining: true,
    note: 'light rigid, above 4500 kg and up to 8000 kg',
    citations: [licenceClassesAu],
  },
  {
    codes: 'au',
    category: 'MR',
    energy: 'any',
    needsTraining: true,
    note: 'medium rigid, above 8000 kg on two axles',
    citations: [licenceClassesAu],
  },
];

/**
 * The classes that are open to a driver for a van of this energy, lightest first.
 *
 * @param testPassed day the car test was passed, ISO date. Without it the driver is taken not to have any right
 * from an old test.
 * @throws RangeError when the date is not a day of the calendar written as year-month-day.
 */
export function licenceClassesFor(
  region: Codes,
  energy: LicenceEnergy,
  testPassed?: string,
): readonly LicenceClass[] {
  if (testPassed !== undefined) requireDay(testPassed);
  return licenceClasses.filter(
    (row) =>
      row.codes === region &&
      (row.energy === 'any' || row.energy === energy) &&
      (row.testPassedBefore === undefined || (testPassed !== undefined && testPassed < row.testPassedBefore)),
  );
}

export interface LicenceQuestion {
  readonly codes: Codes;
  /** Permissible maximum mass from the plate, in kg, above 0. */
  readonly massKg: number;
  readonly energy: LicenceEnergy;
  readonly testPassed?: string | undefined;
  /** The day the answer is for, ISO date. Without it every row counts as in force. */
  readonly onDate?: string | undefined;
}

/**
 * The lowest class that covers the van; among equals, the one that needs no further test.
 *
 * @throws RangeError when the mass is not a positive number or a date is not a day of the calendar.
 */
export function lowestClassFor(question: LicenceQuestion): LicenceClass | undefined {
  const { codes: region, massKg, energy, testPassed, onDate } = question;
  if (!(massKg > 0)) throw new RangeError(`A permissible maximum mass must be above 0 kg, not ${massKg}.`);
  if (onDate !== undefined) requireDay(onDate);
  return licenceClassesFor(region, energy, testPassed).find(
    (row) =>
      massKg <= (row.maxMassKg ?? Number.POSITIVE_INFINITY) &&
      (row.from === undefined || onDate === undefined || onDate >= row.from),
  );
}

// ISO dates of one length sort as text; this keeps out whatever would not.
function requireDay(text: string): void {
  const day = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : undefined;
  if (day === undefined || Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== text) {
    throw new RangeError(`"${text}" is not a day; write it as year-month-day, such as 1996-12-31.`);
  }
}
