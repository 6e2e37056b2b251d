/** Shown with everything that vehicle law has a say in. */
export const vehicleLawCaution =
  'A planning aid. The plate, the law of the country and the police scale decide: have the finished van weighed, axle by axle and loaded for a journey, before it goes on the road.';

/** Shown with everything that rests on where the centre of mass is. */
export const balanceCaution =
  "Worked out from the plan for a stiff frame on level ground. Axle and wheel loads on a scale come first, and so do the base vehicle maker's own body-building limits and the load rating of the tyres.";

export const stabilityCaution =
  'An estimate of a rigid van. Springs, tyres and moving water let a real one tip earlier, and no figure here says how a van handles.';

/** Shown with everything that rests on where things stand and how large they are. */
export const fitCaution =
  'Worked out from the sizes and places in the plan. A real van bows, twists and is out of square: measure it where the thing will stand, and leave room for linings, screws and hands.';

/** Shown with everything that rests on tables of people. */
export const bodyCaution =
  'People differ more than tables do. Try it out, with boxes and tape, with those who will live there.';

/** Shown with everything about getting out. */
export const escapeCaution =
  'A planning aid. Nothing here shows that people will get out of a fire: local rules and fire services come first; fit working alarms, keep the ways out free at night, and try them in the dark.';

/** Shown with everything about what holds things down. */
export const holdCaution =
  'A planning aid. What a fixing holds depends on the metal, wood and glue it sits in, and is not checked here; have structural fixings, seats, belts and tanks looked at by someone qualified. The figures are for braking and bends, not for a crash.';

/** Shown with everything about hot things. */
export const heatCaution =
  "A planning aid. The maker's installation instructions and local codes set the clearances, and a qualified installer decides; heat and exhaust fumes kill.";

/** Shown with everything about cables and gas pipes on their ways. */
export const installationCaution =
  'A planning aid. Local codes and the makers decide how cables and gas pipes may run; a qualified electrician and a qualified gas engineer check the installation, and gas pipes are tested for leaks.';

/** Shown where the body of the van is drilled or cut. */
export const structureCaution =
  "A planning aid. Ribs, pillars, the floor and the roof carry the van: the base vehicle maker's body-building guide says where it may be drilled, and someone qualified decides about cuts.";

/** Shown with everything electrical. */
export const electricalCaution =
  'A planning aid. Local codes and the makers of battery, chargers and appliances decide, and a qualified installer checks the installation before it is used: a cable or a battery that is protected wrongly burns a van down.';

/** Shown with every waiver. */
export const waiverCaution =
  'A waiver writes down a decision. It makes nothing lighter, stronger or less dangerous: what it covers is as broken as before.';

/** Shown with everything that carries mains voltage. */
export const mainsCaution =
  'Mains voltage kills. Work on it is for a licensed person, who also tests it; local codes decide.';

/** Shown with everything about gas. Escaping gas is heavier than air and gathers low. */
export const gasCaution =
  'A planning aid: it says what the plan shows, not how the installation is built. Local codes decide, a qualified gas engineer installs and inspects it and makes a tightness test before it is used, and working gas and carbon monoxide alarms are fitted. Gas explodes, and its fumes kill.';

/** Shown with everything that burns a fuel, and with the air that people breathe beside it. */
export const combustionCaution =
  'A planning aid. Carbon monoxide kills without a smell: local codes and the makers decide about air and flues, a qualified engineer inspects them, and a working carbon monoxide alarm is fitted whatever is printed here.';

/** Shown with everything about the air of the living space. */
export const airCaution =
  'Worked out from free areas and people in the plan. Wind, insect screens, dirt and things in front of a vent change what comes through: local codes set the fixed openings, and they are never covered or closed.';

/** Shown with everything about drinking water and its pipes. */
export const waterCaution =
  'Worked out from the plan. Pipes with kinks, filters and scale give less; water that stands grows germs: use materials for drinking water, flush and disinfect the system, and follow local rules.';

/** Shown with everything about tanks, which are heavy and move. */
export const tankCaution =
  'A planning aid. Full tanks are as heavy as people: have what holds them looked at by someone qualified, and weigh the van with them full and empty.';

/** Shown with everything about warmth and damp. */
export const warmthCaution =
  'Worked out for steady weather and layers without gaps. Metal bridges, wind and workmanship change it by a large part: take it as a comparison of variants, and look behind the lining after the first winter.';
