/*
 * How people live in the van, for water, gas, air and heat. What the plan does not say is undefined, unless there is a
 * usual value, which is then among the assumptions. Temperatures in °C.
 */

export interface Habits {
  /** Those who sleep in the van. */
  readonly people?: number;
  readonly nightsOffGrid?: number;
  /** Where they live, degrees; north and east positive. */
  readonly place?: { readonly latitudeDeg: number; readonly longitudeDeg: number };
  /** The coldest that the van must bear. */
  readonly winterLowC?: number;
  /** How long it stays that cold, s. */
  readonly coldSpellS: number;
  readonly summerHighC?: number;
  /** How far the ground falls where the van stands, as a part of the way; undefined where the plan does not say. */
  readonly parkingSlope?: number;
  /** Between fillings of the fresh tank; else the nights off grid. */
  readonly daysBetweenFills?: number;
  /** Drinking, cooking, washing; without showers where the plan has those apart. */
  readonly waterPerPersonDayM3?: number;
  readonly hotPerPersonDayM3?: number;
  readonly showersPerPersonDay?: number;
  readonly showerM3?: number;
  /** A day, s. */
  readonly cookingS?: number;
  /** A night, s. */
  readonly asleepS: number;
  /** Of water that wet clothes bring in on a day, kg. */
  readonly wetClothesKg?: number;
  readonly daysBetweenGasRefills?: number;
}
