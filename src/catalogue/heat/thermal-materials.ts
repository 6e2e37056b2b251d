import type { Citation } from '../citation.ts';
import { servicesGuide, windowFrameValues } from '../sources.ts';
import {
  designHeat,
  elementCatalogue,
  finiteMetal,
  handbookHeat,
  remembered,
  timberComponents,
  vapourStandard,
} from './heat-sources.ts';

/**
 * How a material of ../materials.ts lets heat and vapour through. Keyed by the same names.
 *
 * The conductivity to calculate with is the highest of the sources for the material as such, because a plan that is
 * too warm on paper is cold at night; where a source has classes of one material, the value is inside their band. The
 * vapour resistance to calculate with is the *lowest*: in a van the outer skin is metal, so vapour that gets in
 * condenses on it, and every layer within is there to hold vapour back.
 */
export interface ThermalMaterial {
  readonly name: string;
  /** W/(m·K), to calculate with. */
  readonly conductivityWPerMK: number;
  readonly lowWPerMK: number;
  readonly highWPerMK: number;
  /** How many times better than still air it holds vapour back (μ), to calculate with. */
  readonly vapourResistanceFactor: number;
  readonly highVapourResistanceFactor: number;
  readonly heatCapacityJPerKgK: number;
  readonly citations: readonly Citation[];
}

type Band = readonly [low: number, value: number, high: number];

function heat(
  name: string,
  conductivity: number | Band,
  vapour: number | readonly [low: number, high: number],
  heatCapacityJPerKgK: number,
  ...citations: readonly [Citation, ...Citation[]]
): ThermalMaterial {
  const [lowWPerMK, conductivityWPerMK, highWPerMK] =
    typeof conductivity === 'number' ? [conductivity, conductivity, conductivity] : conductivity;
  const [vapourResistanceFactor, highVapourResistanceFactor] =
    typeof vapour === 'number' ? [vapour, vapour] : vapour;
  return {
    name,
    conductivityWPerMK,
    lowWPerMK,
    highWPerMK,
    vapourResistanceFactor,
    highVapourResistanceFactor,
    heatCapacityJPerKgK,
    citations,
  };
}

const boards: readonly ThermalMaterial[] = [
  heat('birch plywood', [0.17, 0.21, 0.24], [90, 220], 1600, elementCatalogue, designHeat, vapourStandard),
  heat('poplar plywood', [0.13, 0.15, 0.15], [70, 200], 1600, elementCatalogue, designHeat, vapourStandard),
  heat('plywood', [0.13, 0.17, 0.17], [70, 200], 1600, elementCatalogue, designHeat, vapourStandard),
  heat(
    'softwood plywood',
    [0.09, 0.15, 0.15],
    [70, 200],
    1600,
    elementCatalogue,
    handbookHeat,
    vapourStandard,
  ),
  heat('hardwood plywood', [0.17, 0.21, 0.24], [90, 220], 1600, elementCatalogue, designHeat, vapourStandard),
  heat('MDF', [0.18, 0.2, 0.2], [20, 30], 1700, elementCatalogue, designHeat, vapourStandard),
  heat('light MDF', [0.14, 0.18, 0.18], [12, 20], 1700, elementCatalogue, designHeat, vapourStandard),
  heat('hardboard', [0.105, 0.2, 0.2], [20, 30], 1340, elementCatalogue, handbookHeat, vapourStandard),
  // The Austrian sheets have 200 for its vapour resistance where the Spanish catalogue has 30.
  heat(
    'OSB',
    [0.106, 0.13, 0.13],
    [30, 200],
    1700,
    elementCatalogue,
    timberComponents,
    designHeat,
    handbookHeat,
  ),
  heat(
    'particleboard',
    [0.135, 0.18, 0.18],
    [15, 50],
    1700,
    elementCatalogue,
    designHeat,
    handbookHeat,
    vapourStandard,
  ),
];

/** Timber by its density in the Spanish catalogue; the draft of the frame standard has 200 for vapour. */
const timber = (
  name: string,
  conductivity: Band,
  vapour: readonly [number, number],
  ...more: readonly Citation[]
) => heat(name, conductivity, vapour, 1600, elementCatalogue, windowFrameValues, ...more);

const timbers: readonly ThermalMaterial[] = [
  timber('oak', [0.18, 0.23, 0.23], [50, 200]),
  timber('ash', [0.18, 0.18, 0.23], [50, 200]),
  timber('birch', [0.18, 0.18, 0.23], [50, 200]),
  timber('maple', [0.18, 0.23, 0.23], [50, 200]),
  timber('larch', [0.155, 0.18, 0.18], [20, 200], timberComponents),
  timber('Douglas fir', [0.13, 0.18, 0.18], [20, 200]),
  timber('pine', [0.13, 0.15, 0.18], [20, 200]),
  timber('spruce', [0.12, 0.15, 0.15], [20, 200], timberComponents),
  timber('poplar', [0.13, 0.15, 0.15], [50, 200]),
  timber('aspen', [0.13, 0.15, 0.15], [50, 200]),
  timber('cedar', [0.13, 0.13, 0.13], [20, 200]),
  timber('balsa', [0.057, 0.057, 0.057], [20, 20]),
  timber('softwood', [0.12, 0.15, 0.18], [20, 200], timberComponents),
  timber('hardwood', [0.18, 0.18, 0.23], [50, 200]),
];

const insulation: readonly ThermalMaterial[] = [
  // By gas in its cells 0.025 to 0.042; products 0.034 up to 80 mm and 0.036 above.
  heat('XPS', [0.025, 0.036, 0.042], [80, 100], 1470, elementCatalogue, handbookHeat),
  heat('EPS', [0.029, 0.0375, 0.046], [20, 50], 1470, elementCatalogue, timberComponents, handbookHeat),
  heat('PIR', [0.0235, 0.03, 0.03], 60, 1470, servicesGuide, handbookHeat, {
    ...elementCatalogue,
    caution: 'Its vapour resistance is that of polyurethane board with facing that lets gas through.',
  }),
  heat('faced PIR', [0.019, 0.025, 0.025], [60, 100_000], 1470, handbookHeat, {
    ...elementCatalogue,
    caution:
      'Tight facing counts against vapour only where every joint and edge is taped; the low value is the bare foam.',
  }),
  heat('PUR', [0.027, 0.03, 0.035], [60, 100], 1470, elementCatalogue, servicesGuide),
  heat('spray foam', [0.026, 0.035, 0.035], [60, 100], 1470, elementCatalogue, handbookHeat),
  heat(
    'light spray foam',
    [0.04, 0.042, 0.042],
    [3, 20],
    1470,
    handbookHeat,
    elementCatalogue,
    remembered('Vapour resistance factor 3 of open-celled foam'),
  ),
  heat(
    'sheep wool',
    [0.035, 0.045, 0.045],
    [1, 2],
    1700,
    remembered('Sheep wool batts, 0.035 to 0.045 W/(m·K), vapour resistance factor 1 to 2'),
  ),
  heat('glass wool', [0.036, 0.0465, 0.0465], 1, 840, handbookHeat, elementCatalogue),
  heat('glass wool slab', [0.033, 0.036, 0.036], 1, 840, handbookHeat, elementCatalogue),
  heat('mineral wool', [0.031, 0.0405, 0.05], 1, 840, elementCatalogue, handbookHeat),
  heat('rock wool', [0.031, 0.0405, 0.0405], 1, 840, elementCatalogue, handbookHeat, timberComponents),
  heat(
    'cellulose',
    0.042,
    [1, 2],
    1380,
    handbookHeat,
    remembered('Vapour resistance factor 1 to 2 of loose cellulose'),
  ),
  heat('expanded cork', [0.049, 0.049, 0.055], 5, 1560, elementCatalogue),
  // Sheets sold for pipes and vans claim 0.033 to 0.036; the standard's design value is the stricter.
  heat(
    'elastomeric foam',
    [0.032, 0.05, 0.05],
    [7000, 10_000],
    1500,
    designHeat,
    handbookHeat,
    servicesGuide,
    elementCatalogue,
  ),
];

const coreFoam = (name: string, conductivityWPerMK: number): ThermalMaterial =>
  heat(
    name,
    [0.03, conductivityWPerMK, conductivityWPerMK],
    [50, 200],
    1400,
    { ...servicesGuide, caution: 'PVC foam of 37 kg/m³: 0.035 W/(m·K). Read in an uploaded copy.' },
    remembered('Conductivity of core foam rising with density, vapour resistance factor at least 50'),
  );

const cores: readonly ThermalMaterial[] = [
  coreFoam('foam core 45', 0.035),
  coreFoam('foam core 60', 0.035),
  coreFoam('foam core 80', 0.036),
  coreFoam('foam core 100', 0.038),
  coreFoam('foam core 130', 0.041),
  coreFoam('foam core 160', 0.045),
  coreFoam('foam core 200', 0.05),
  coreFoam('PET foam core', 0.038),
];

const floors: readonly ThermalMaterial[] = [
  heat(
    'vinyl',
    [0.19, 0.25, 0.25],
    [10_000, 50_000],
    1400,
    designHeat,
    servicesGuide,
    elementCatalogue,
    vapourStandard,
  ),
  heat(
    'linoleum',
    [0.17, 0.19, 0.19],
    [800, 1000],
    1400,
    designHeat,
    servicesGuide,
    elementCatalogue,
    vapourStandard,
  ),
  heat('rubber floor', [0.17, 0.4, 0.4], 10_000, 1400, handbookHeat, designHeat, elementCatalogue),
  heat('cork tile', 0.065, [20, 40], 1500, elementCatalogue, vapourStandard, {
    ...designHeat,
    caution: 'The copy prints 65 W/(m·K), better than cast iron: a misprint for 0.065.',
  }),
  heat('carpet', 0.06, 5, 1300, designHeat, servicesGuide, elementCatalogue),
  heat(
    'carpet on rubber underlay',
    [0.039, 0.1, 0.1],
    5,
    1300,
    servicesGuide,
    handbookHeat,
    elementCatalogue,
  ),
  heat('felt underlay', 0.05, 15, 1300, designHeat, elementCatalogue),
  heat('wool underlay', 0.06, 15, 1300, designHeat, elementCatalogue),
  heat('cork underlay', 0.05, [5, 20], 1500, designHeat, elementCatalogue),
  heat('foam underlay', 0.1, [100, 10_000], 1400, designHeat, elementCatalogue, vapourStandard),
];

const tight = 100_000;

const metals: readonly ThermalMaterial[] = [
  heat('aluminium', [160, 230, 230], tight, 880, elementCatalogue, designHeat, servicesGuide, finiteMetal),
  heat('steel', [45, 50, 50], tight, 450, designHeat, elementCatalogue, servicesGuide, finiteMetal),
  heat('stainless steel', [16, 29, 29], tight, 460, servicesGuide, designHeat, elementCatalogue, finiteMetal),
  heat('copper', 380, tight, 380, designHeat, windowFrameValues, finiteMetal),
  heat('brass', 120, tight, 380, designHeat, elementCatalogue, finiteMetal),
];

const glazingAndPlastics: readonly ThermalMaterial[] = [
  heat('glass', 1, tight, 750, designHeat, elementCatalogue, windowFrameValues, finiteMetal),
  heat('acrylic', [0.18, 0.2, 0.2], [10_000, 50_000], 1500, designHeat, elementCatalogue, windowFrameValues),
  heat('polycarbonate', 0.2, 5000, 1200, designHeat, elementCatalogue, windowFrameValues),
  heat('PVC', 0.17, 50_000, 900, designHeat, elementCatalogue, windowFrameValues),
  heat('flexible PVC', 0.14, 100_000, 1000, designHeat, elementCatalogue),
  heat('HDPE', 0.5, 100_000, 1800, designHeat, elementCatalogue),
  heat('LDPE', 0.33, 100_000, 2200, designHeat, elementCatalogue),
  heat('polypropylene', 0.22, 10_000, 1800, designHeat, elementCatalogue),
  heat('epoxy resin', 0.2, 10_000, 1400, designHeat, elementCatalogue),
  heat('polyester resin', 0.19, 10_000, 1200, designHeat, elementCatalogue),
  heat('EPDM', 0.25, 6000, 1000, designHeat, elementCatalogue),
  heat('GRP', 0.4, 10_000, 1200, windowFrameValues, {
    ...elementCatalogue,
    caution: 'Vapour resistance and heat capacity are those of its polyester resin.',
  }),
];

const openFoam = remembered('Vapour resistance factor of open-celled upholstery foam, 2 to 5');

const cushions: readonly ThermalMaterial[] = [
  heat('mattress foam', [0.035, 0.05, 0.05], [2, 5], 1500, designHeat, openFoam),
  heat('memory foam', [0.035, 0.05, 0.05], [2, 5], 1500, designHeat, openFoam),
  heat('foam rubber', 0.06, [2, 7000], 1500, designHeat, elementCatalogue, openFoam),
];

export const thermalMaterials: readonly ThermalMaterial[] = [
  ...boards,
  ...timbers,
  ...insulation,
  ...cores,
  ...floors,
  ...metals,
  ...glazingAndPlastics,
  ...cushions,
];

const byName: ReadonlyMap<string, ThermalMaterial> = new Map(thermalMaterials.map((row) => [row.name, row]));

/** The row of a material by its name in ../materials.ts (`Material.name`, not an other name). */
export const thermalMaterialNamed = (name: string): ThermalMaterial | undefined => byName.get(name);
