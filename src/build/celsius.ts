const zeroC = 273.15;

/** Rounded, so that a temperature on the border of a table's rows takes the row it is written in. */
export const celsius = (kelvin: { readonly value: number }): number =>
  Number((kelvin.value - zeroC).toFixed(9));
