/** A plan with a battery, loads and a place: an invented van in Munich; every part can be replaced. */
export const energyPlan = (changes: Partial<Record<keyof typeof parts, string>> = {}): string => {
  const all = { ...parts, ...changes };
  return `storystick: 1
van: {max_mass: 3500 kg}
fixtures:
  fridge: {mass: 20 kg}
  lamps: {mass: 1 kg}
electrical:
  voltage: 12 V
  battery: ${all.battery}
  circuits:
    fridge: {from: battery, to: fridge, ${all.fridge}}
    lamps: {from: battery, to: lamps, ${all.lamps}}
${all.more}
living: ${all.living}
`;
};

const parts = {
  battery: '{chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 200 Ah}',
  fridge: 'load: 45 W, hours: 8 h',
  lamps: 'load: 20 W, hours: 4 h, when: evening',
  more: '  solar: {roof: {modules: 4, power: 110 W, open_circuit: 22 V, short_circuit: 6.3 A}}',
  living: '{nights_off_grid: 3, place: {latitude: 48.2, longitude: 11.6}}',
};
