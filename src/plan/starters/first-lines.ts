import { type Starting, withComment } from './starting.ts';

/** The least that gives a useful answer, with what to add next in comments. It checks without a failure. */
export const firstLines = ({
  heading,
  name,
  codes,
  units,
  file,
  van,
}: Starting): string => `# ${heading}: the first lines of a plan. The masses of the empty van, the bed and the tank are invented: put your own in
# their place, and after each change run
#   storystick check ${file}
# What the plan does not say is assumed (\`storystick check ${file} --assumptions\` lists it) or not checked, and then the
# report names the keys to add. For completion and hover in an editor see \`storystick schema --help\`.
storystick: 1                         # version of the plan format
name: ${name}
${withComment(`codes: ${codes}`, 'whose limits: uk, eu, us or au')}
${withComment(`units: ${units}`, 'of the report; a plan may mix them')}
van:
${withComment(`  max_mass: ${van.maxMass}`, 'these three stand on the plate on the door pillar')}
  axle_limits: {front: ${van.frontAxle}, rear: ${van.rearAxle}}
  # The empty van on a weighbridge, axle by axle. Nothing is worth more: most plans fail by mass, and late
  unladen: {front: 1190 kg ± 10 kg, rear: 870 kg ± 10 kg, from: weighbridge, includes: {driver: false, fuel: 50 %}}
${withComment(`  wheelbase: ${van.wheelbase}`, 'from the middle of the front axle to the middle of the rear axle')}
  load_bay:
${withComment(`    behind_front_axle: ${van.behindFrontAxle}`, 'from the middle of the front axle to the front of the load bay')}
    length: ${van.length}
${withComment(`    width: ${van.width}`, 'from lining to lining, not between the wheel arches')}
    height: ${van.height}
  fuel_tank: {holds: 70 L, fuel: diesel}

# Everything that is built in, by a name of your own: its mass, its size, and where it stands. A place is measured to the
# nearest face of the thing: from_front or from_rear, from_left or from_right (as seen facing forward) or centred: true,
# and above_floor. What is left out may be anywhere that the space allows.
fixtures:
  bed: {mass: 60 kg ± 5 kg, size: {length: 1900 mm, width: 1200 mm, height: 400 mm}, at: {from_rear: 0 mm, centred: true}}

# Water weighs a kilogram a litre. Each limit is held against the load state that is worst for it: full or empty.
tanks:
  fresh tank: {contents: fresh, holds: 70 L, at: {from_front: 1000 mm}}

# Next: who rides and sleeps, what you take along, and what covers the walls.
# people: {seats: {driver: {mass: 82 kg}}, sleepers: [{stature: 1.78 m}]}
# stores:
#   clothes: {full: 40 kg, empty: 10 kg}
# build_ups:
#   floor: {of: floor, layers: [{material: birch plywood, thickness: 12 mm}]}
#   walls: {of: walls, layers: [{material: sheep wool, thickness: 50 mm}, {material: poplar plywood, thickness: 4 mm}]}
# \`storystick new --kind full\` writes a whole plan to look things up in.
`;
