import type { Citation } from './citation.ts';
import {
  birchPlywoodDatasheet,
  buildingElementCatalogue,
  buildingModelValues,
  designValues,
  dryToWetTimber,
  foamByUse,
  foamCoreClasses,
  handbookValues,
  seasonedTimber,
  servicesGuide,
  timberVariation,
  windowFrameValues,
} from './sources.ts';

/**
 * What a material may be used for, the main purpose first. Another material can stand in for it if it serves the
 * main purpose too.
 */
export type Purpose =
  | 'board'
  | 'timber'
  /** What walls and ceilings are faced with, thin board or boarding alike. */
  | 'lining'
  | 'insulation'
  /** Insulation that carries a floor. */
  | 'rigid insulation'
  | 'core'
  | 'floor covering'
  | 'underlay'
  | 'glazing'
  | 'metal'
  | 'cushion'
  | 'plastic'
  | 'membrane';

/**
 * One material as a builder would name it. Densities in kg/m³, as installed and dry.
 *
 * `densityKgM3` is the value to calculate with; `lowKgM3` and `highKgM3` span the sources. Where two sources differ
 * about the same product the heavier is the value, because a plan that is too light on paper is overloaded on the
 * road. Where one source gives a range, the value is inside it. Where no source gives a range, both ends equal the
 * value: that is silence of the sources, not exactness.
 */
export interface Material {
  readonly name: string;
  /** Other names of the trade for the same thing. */
  readonly otherNames: readonly string[];
  readonly densityKgM3: number;
  readonly lowKgM3: number;
  readonly highKgM3: number;
  readonly purposes: readonly Purpose[];
  readonly citations: readonly Citation[];
}

interface Band {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

function material(
  names: string | readonly [string, ...string[]],
  purposes: readonly Purpose[],
  density: number | Band,
  ...citations: readonly [Citation, ...Citation[]]
): Material {
  const [name, ...otherNames] = typeof names === 'string' ? [names] : names;
  const { low, value, high } =
    typeof density === 'number' ? { low: density, value: density, high: density } : density;
  return { name, otherNames, densityKgM3: value, lowKgM3: low, highKgM3: high, purposes, citations };
}

const between = (low: number, value: number, high: number): Band => ({ low, value, high });

/** The usual spread within one species of timber, ± 10 %. */
const species = (value: number): Band => between(0.9 * value, value, 1.1 * value);

const fromMemory = (title: string, caution: string): Citation => ({ title, provenance: 'memory', caution });

const boards: readonly Material[] = [
  // By thickness 660 to 710; the value is that of the 12 mm sheet. The rows by thickness are in sheets.ts.
  material(
    ['birch plywood', 'birch ply'],
    ['board'],
    between(660, 695, 710),
    birchPlywoodDatasheet,
    designValues,
  ),
  material(
    ['poplar plywood', 'poplar ply'],
    ['board', 'lining'],
    between(426, 450, 550),
    fromMemory('Poplar plywood, all poplar', 'Not looked up.'),
    {
      title: "A plywood seller's page on Italian poplar plywood: 426 kg/m³",
      readAt: 'https://www.plyonline.com.au/blogs/news/what-is-poplar-plywood',
      provenance: 'read',
    },
    {
      title: "A plywood maker's data: 450 to 550 kg/m³",
      readAt: 'https://wb15941160.m.icoc.bz/en/pd.jsp?desc=false&mid=3&pid=1',
      provenance: 'read',
      caution: 'Its core may be mixed hardwood, which is heavier than poplar.',
    },
  ),
  // The catalogue's classes on either side of 500 reach from 450 to 600.
  material(
    ['plywood', 'ply'],
    ['board'],
    between(450, 500, 600),
    designValues,
    buildingElementCatalogue,
    handbookValues,
  ),
  material('softwood plywood', ['board', 'lining'], between(450, 460, 460), handbookValues),
  material('hardwood plywood', ['board'], between(600, 700, 750), designValues, buildingElementCatalogue),
  // The standard's table knows MDF as fibreboard; the catalogue's two MDF classes have their middles at 650 and 875.
  material('MDF', ['board'], between(650, 800, 875), designValues, buildingElementCatalogue),
  material('light MDF', ['board'], between(550, 650, 750), designValues, buildingElementCatalogue),
  material('hardboard', ['board'], between(800, 880, 1010), handbookValues),
  material(
    ['OSB', 'oriented strand board'],
    ['board'],
    between(600, 650, 650),
    designValues,
    handbookValues,
    buildingElementCatalogue,
  ),
  material(
    ['particleboard', 'chipboard'],
    ['board'],
    between(600, 730, 820),
    designValues,
    buildingElementCatalogue,
  ),
];

const timbers: readonly Material[] = [
  material('oak', ['lining', 'timber'], between(590, 760, 930), seasonedTimber, dryToWetTimber),
  material('ash', ['lining', 'timber'], between(0.9 * 540, 670, 1.1 * 670), seasonedTimber, timberVariation),
  material(
    'birch',
    ['timber'],
    between(510, 670, 1.1 * 670),
    seasonedTimber,
    dryToWetTimber,
    timberVariation,
  ),
  material('maple', ['timber'], species(755), seasonedTimber, timberVariation),
  material('larch', ['lining', 'timber'], species(590), seasonedTimber, timberVariation),
  material('Douglas fir', ['lining', 'timber'], species(530), seasonedTimber, timberVariation),
  // The value is that of European redwood; the ends are those of the red and the Canadian pines.
  material(['pine', 'redwood', 'Scots pine'], ['lining', 'timber'], between(350, 510, 660), seasonedTimber),
  material(
    'spruce',
    ['lining', 'timber'],
    between(350, 450, 1.1 * 450),
    seasonedTimber,
    dryToWetTimber,
    timberVariation,
  ),
  // From dry to wet; the value is the middle.
  material('poplar', ['timber'], between(390, 455, 520), dryToWetTimber),
  material('aspen', ['timber'], species(420), seasonedTimber, timberVariation),
  material(['cedar', 'red cedar'], ['lining', 'timber'], species(380), seasonedTimber, timberVariation),
  material('balsa', ['core'], species(170), seasonedTimber, timberVariation),
  material('softwood', ['lining', 'timber'], between(430, 500, 570), designValues, buildingElementCatalogue),
  material('hardwood', ['lining', 'timber'], between(565, 700, 750), designValues, buildingElementCatalogue),
];

const insulation: readonly Material[] = [
  material(
    ['XPS', 'extruded polystyrene'],
    ['rigid insulation', 'insulation', 'core'],
    between(32.5, 40, 40),
    handbookValues,
    buildingModelValues,
  ),
  material(
    ['EPS', 'expanded polystyrene'],
    ['rigid insulation', 'insulation'],
    between(20, 26, 26),
    handbookValues,
    buildingModelValues,
  ),
  material(
    ['PIR', 'polyisocyanurate'],
    ['rigid insulation', 'insulation'],
    between(30, 45, 45),
    handbookValues,
    buildingModelValues,
    servicesGuide,
  ),
  material('faced PIR', ['rigid insulation', 'insulation'], 65, handbookValues),
  material(
    ['PUR', 'polyurethane foam'],
    ['rigid insulation', 'insulation'],
    30,
    buildingModelValues,
    servicesGuide,
  ),
  material('spray foam', ['insulation'], between(30, 40, 55), handbookValues),
  material('light spray foam', ['insulation'], 7, handbookValues),
  material(
    'sheep wool',
    ['insulation'],
    between(9.6, 20, 25.9),
    {
      title:
        'International Journal of Energy Research 30(1), 2006, pages 37 to 49: sheep wool batts of 9.6 to 25.9 kg/m³',
      readAt: 'https://437790.wynu.asia/research/tech/periodicals/view.php?seq=134525',
      provenance: 'read',
      caution: 'Read as an abstract on another site.',
    },
    {
      title: 'The value of 20 kg/m³ inside the measured range (its middle is 17.75)',
      provenance: 'own choice',
    },
  ),
  // Wools are listed by their form, because batt and slab differ by a factor of eight.
  material('glass wool', ['insulation'], between(10.5, 12, 12), {
    ...handbookValues,
    caution:
      'Batts and rolls of 50 and 90 mm. A second source has 80 kg/m³ for glass wool of an unnamed kind, which is a slab: see "glass wool slab".',
  }),
  material('glass wool slab', ['insulation'], between(80, 80, 160), buildingModelValues, handbookValues),
  material('mineral wool', ['insulation'], between(30, 32, 32), {
    ...handbookValues,
    caution: 'Soft felt and batts. A dense felt has 97.5 kg/m³: see "rock wool".',
  }),
  material(
    ['rock wool', 'stone wool', 'mineral wool slab'],
    ['insulation'],
    between(97.5, 110, 110),
    {
      ...buildingModelValues,
      caution: 'The density of a slab; soft batts of rock wool are nearer to "mineral wool".',
    },
    handbookValues,
  ),
  material(['cellulose', 'loose cellulose'], ['insulation'], 42.5, handbookValues),
  material('expanded cork', ['rigid insulation', 'insulation'], 125, buildingElementCatalogue),
  material(
    ['elastomeric foam', 'closed-cell rubber foam'],
    ['insulation'],
    70,
    designValues,
    handbookValues,
    servicesGuide,
  ),
];

const cores: readonly Material[] = [
  ...[45, 60, 80, 100, 130, 160, 200].map((kgM3) =>
    material([`foam core ${kgM3}`, `PVC foam ${kgM3}`], ['core', 'insulation'], kgM3, foamCoreClasses),
  ),
  material('PET foam core', ['core'], 100, {
    title: 'Slides on foam grades: a PET foam of 100 kg/m³',
    readAt: 'https://powershow.com./view1/1d8a17-ZDc1Z/Foam_Grade_PET_powerpoint_ppt_presentation',
    provenance: 'read',
    caution: 'One example grade.',
  }),
];

const floors: readonly Material[] = [
  material(
    ['vinyl', 'vinyl floor'],
    ['floor covering'],
    between(1200, 1700, 1700),
    designValues,
    servicesGuide,
  ),
  material(['linoleum', 'lino'], ['floor covering'], 1200, designValues, servicesGuide),
  material(
    ['rubber floor', 'rubber flooring'],
    ['floor covering'],
    between(1200, 1900, 1900),
    designValues,
    handbookValues,
  ),
  material(['cork tile', 'cork tiles', 'cork floor'], ['floor covering'], 400, designValues),
  material('carpet', ['floor covering'], between(160, 200, 200), designValues, servicesGuide),
  material(
    'carpet on rubber underlay',
    ['floor covering'],
    between(290, 400, 400),
    servicesGuide,
    handbookValues,
  ),
  material('felt underlay', ['underlay'], 120, designValues),
  material('wool underlay', ['underlay'], 200, designValues),
  material('cork underlay', ['underlay'], 200, designValues),
  material('foam underlay', ['underlay'], 270, designValues),
];

const metals: readonly Material[] = [
  material(
    ['aluminium', 'aluminum'],
    ['metal'],
    between(2700, 2800, 2800),
    designValues,
    buildingElementCatalogue,
  ),
  material('steel', ['metal'], 7800, designValues, buildingElementCatalogue),
  material('stainless steel', ['metal'], 7900, designValues, buildingElementCatalogue),
  material('copper', ['metal'], 8900, designValues, windowFrameValues),
  material('brass', ['metal'], 8400, designValues),
];

const glazingAndPlastics: readonly Material[] = [
  material(['glass', 'float glass'], ['glazing'], 2500, designValues, handbookValues),
  // The table lists "acrylic" at 1050 and PMMA at 1180; glazing sheet is PMMA.
  material(
    ['acrylic', 'PMMA'],
    ['glazing', 'plastic'],
    between(1050, 1180, 1180),
    designValues,
    windowFrameValues,
  ),
  material('polycarbonate', ['glazing', 'plastic'], 1200, designValues, windowFrameValues),
  material(['PVC', 'PVC board'], ['board', 'plastic'], 1390, designValues, windowFrameValues),
  material('flexible PVC', ['plastic', 'membrane'], 1200, designValues),
  material(['HDPE', 'high density polyethylene'], ['plastic'], 980, designValues),
  material(['LDPE', 'low density polyethylene'], ['plastic', 'membrane'], 920, designValues),
  material(['polypropylene', 'PP'], ['plastic'], 910, designValues),
  material('epoxy resin', ['plastic'], 1200, designValues),
  material('polyester resin', ['plastic'], 1400, designValues),
  material('EPDM', ['membrane'], 1150, designValues),
  material(
    ['GRP', 'glass-fibre reinforced plastic'],
    ['board', 'plastic'],
    between(1700, 1900, 1900),
    { ...windowFrameValues, caution: 'Given there for glass fibre in polyester resin.' },
    fromMemory('GRP skin, 1700 kg/m³', 'Not looked up. A hand-laid skin rich in resin is lighter still.'),
  ),
];

const cushions: readonly Material[] = [
  material(
    ['mattress foam', 'upholstery foam'],
    ['cushion'],
    between(25, 35, 40),
    fromMemory('Mattress foam, 35 kg/m³', 'Not looked up.'),
    foamByUse,
  ),
  material('memory foam', ['cushion'], between(50, 65, 80), foamByUse),
  material(['foam rubber', 'latex foam'], ['cushion'], 70, designValues),
];

/** Every material the tool knows, grouped by kind. */
export const materials: readonly Material[] = [
  ...boards,
  ...timbers,
  ...insulation,
  ...cores,
  ...floors,
  ...metals,
  ...glazingAndPlastics,
  ...cushions,
];

const fold = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, '');

const byName: ReadonlyMap<string, Material> = new Map(
  materials.flatMap((row) => [row.name, ...row.otherNames].map((name) => [fold(name), row] as const)),
);

/** The material of that name; letter case, spaces, hyphens and underscores do not matter. */
export const materialNamed = (name: string): Material | undefined => byName.get(fold(name));
