/*
 * What a remedy says is typed as it is printed. So a number is first brought to the digits that are shown of it, to the
 * side that is enough.
 */

/** Of a number that is shown with one decimal below ten and none above, the step between two that can be shown. */
const stepOf = (shown: number): number => (shown < 10 ? 0.1 : 1);

/** Slack for sums of what was typed in other units. */
const slack = 1e-9;

/** Up to what is shown, of watts, or with `perSi` of another unit: litres are 1000 to the cubic metre. */
export function upToShown(value: number, perSi = 1): number {
  const shown = value * perSi;
  const step = stepOf(shown);
  return (Math.ceil(shown / step - slack) * step) / perSi;
}

/** Down to what is shown, of what must not be more. */
export function downToShown(value: number, perSi = 1): number {
  const shown = value * perSi;
  const step = stepOf(shown);
  return (Math.floor(shown / step + slack) * step) / perSi;
}

/** Up to whole minutes below an hour, and to what is shown of hours from there on. */
export function upToShownTime(seconds: number): number {
  const minutes = Math.ceil(seconds / 60 - slack);
  return minutes < 60 ? minutes * 60 : upToShown(seconds, 1 / 3600);
}

/** Down to whole millimetres, or from 10 m on to the centimetres that are shown. */
export function downToShownLength(lengthM: number): number {
  const steps = lengthM < 10 ? 1000 : 100;
  return Math.floor(lengthM * steps + slack) / steps;
}

/** Up to whole degrees. */
export const upToDegree = (celsius: number): number => Math.ceil(celsius - slack);

export const litresPerM3 = 1000;
export const litresAMinute = 60_000;
export const cm2PerM2 = 10_000;
